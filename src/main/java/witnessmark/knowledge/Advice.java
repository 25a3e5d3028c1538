package witnessmark.knowledge;

import witnessmark.language.Language;

/** A coaching point or towing-prep reminder in both languages, with its reason (may be empty). */
public record Advice(String id, String english, String spanish, String whyEnglish, String whySpanish)
        implements BothLanguages {

    /** The reason; empty where none is given. */
    public String why(Language language) {
        return switch (language) {
            case ENGLISH -> whyEnglish;
            case SPANISH -> whySpanish;
        };
    }
}
