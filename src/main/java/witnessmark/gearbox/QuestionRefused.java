package witnessmark.gearbox;

import witnessmark.refusal.Refusal;

/** A question about a truck that has no answer. */
public final class QuestionRefused extends Refusal {
    private static final long serialVersionUID = 1L;

    public QuestionRefused(String sentence) {
        super(sentence);
    }

    public QuestionRefused(String what, String mend) {
        super(what, mend);
    }
}
