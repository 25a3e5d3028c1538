package witnessmark.casefile;

/** A value or change that a case does not take; the message is one line: what was given, then the mend. */
public final class CaseRefused extends IllegalArgumentException {
    private final String what;
    private final String mend;

    public CaseRefused(String what, String mend) {
        super(what + "; " + mend);
        this.what = what;
        this.mend = mend;
    }

    public String what() {
        return what;
    }

    public String mend() {
        return mend;
    }
}
