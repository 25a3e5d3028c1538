package witnessmark.casefile;

import witnessmark.refusal.Refusal;

/** A value or change that a case does not take. */
public final class CaseRefused extends Refusal {
    private static final long serialVersionUID = 1L;

    /** @param sentence a sentence that holds its own mend, or one such line for each of several faults */
    public CaseRefused(String sentence) {
        super(sentence);
    }

    public CaseRefused(String what, String mend) {
        super(what, mend);
    }
}
