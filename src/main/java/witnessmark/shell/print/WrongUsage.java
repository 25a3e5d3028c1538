package witnessmark.shell.print;

import witnessmark.refusal.Refusal;

/** A command was typed wrongly; the mend says what is allowed. */
public final class WrongUsage extends Refusal {
    private static final long serialVersionUID = 1L;

    public WrongUsage(String sentence) {
        super(sentence);
    }

    public WrongUsage(String what, String mend) {
        super(what, mend);
    }
}
