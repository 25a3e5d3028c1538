package witnessmark.casefile.store;

import witnessmark.casefile.CaseId;
import witnessmark.refusal.Refusal;

/** Another shell has changed the case since it was read; nothing was written. */
public final class CaseChangedMeanwhile extends Refusal {
    private static final long serialVersionUID = 1L;

    public CaseChangedMeanwhile(CaseId id, long seen, long now) {
        super(
                "case '" + id + "' was changed meanwhile: entry " + seen + " was the last one seen, now it is " + now,
                "read it again and repeat the change");
    }
}
