package witnessmark.interview;

import java.util.List;
import java.util.stream.Stream;
import witnessmark.language.Language;
import witnessmark.language.Texts;
import witnessmark.refusal.Refusal;

/** What was answered to a question and is no answer to it; its message is English, {@link #in} tells it in the tongue spoken. */
public final class NotAnAnswer extends Refusal {
    private static final long serialVersionUID = 1L;

    private final String key;
    private final List<String> given;

    /**
     * @param key names the sentence among the texts of the interview, which holds its own mend
     * @param given what was answered, and whatever else fills the places of the sentence
     */
    public NotAnAnswer(String key, Object... given) {
        super(Texts.of("interview", Language.ENGLISH).text(key, given));
        this.key = key;
        this.given = Stream.of(given).map(String::valueOf).toList();
    }

    /** The same in the language of these texts. */
    public String in(Texts wording) {
        return wording.text(key, given.toArray());
    }

    /** What a refusal says to whoever answers: in his language where it knows it. */
    public static String told(Refusal refusal, Texts wording) {
        return refusal instanceof NotAnAnswer answer ? answer.in(wording) : String.valueOf(refusal.getMessage());
    }
}
