package witnessmark.casefile;

import witnessmark.refusal.Refusal;

/** A value or change that a case does not take. */
public final class CaseRefused extends Refusal {
    private static final long serialVersionUID = 1L;

    public CaseRefused(String what, String mend) {
        super(what, mend);
    }
}
