package witnessmark.shell.interview;

import java.util.List;
import witnessmark.language.Texts;

/** The words that TAB offers at a question, in the language spoken. */
final class TabWords {
    private TabWords() {}

    /** @param where which question: intake, complaint, left, check, sure, meant, limit, dense or end */
    static List<String> at(String where, Texts wording) {
        return List.of(wording.text("tab." + where).split(", "));
    }
}
