package witnessmark.knowledge;

import witnessmark.language.Language;

/** What the knowledge says in every language at once. */
public interface BothLanguages {
    String english();

    String spanish();

    default String in(Language language) {
        return switch (language) {
            case ENGLISH -> english();
            case SPANISH -> spanish();
        };
    }
}
