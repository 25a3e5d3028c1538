package witnessmark.gearbox;

/** A question about a truck that has no answer; the message says what was given and what may be. */
public final class QuestionRefused extends IllegalArgumentException {

    public QuestionRefused(String message) {
        super(message);
    }
}
