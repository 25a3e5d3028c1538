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

    /**
     * For a word that is none of those allowed.
     *
     * @param where the option or the thing that takes it
     * @param allowed the words it takes, as said in the mend
     */
    public static WrongUsage unknown(String where, String given, String allowed) {
        return new WrongUsage(where + " '" + Terminal.harmless(given) + "' is not known", allowed);
    }
}
