package witnessmark.casefile.store;

import witnessmark.casefile.CaseId;

/** Another shell has changed the case since it was read; nothing was written. */
public final class CaseChangedMeanwhile extends RuntimeException {
    public CaseChangedMeanwhile(CaseId id, long seen, long now) {
        super("case '" + id + "' was changed meanwhile: entry " + seen + " was the last one seen, now it is " + now
                + "; read it again and repeat the change");
    }
}
