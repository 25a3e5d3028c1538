package witnessmark.shell.print;

import witnessmark.refusal.Refusal;

/** An input was refused. */
public final class Refused extends Refusal {
    private static final long serialVersionUID = 1L;

    public Refused(String sentence) {
        super(sentence);
    }

    public Refused(String what, String mend) {
        super(what, mend);
    }
}
