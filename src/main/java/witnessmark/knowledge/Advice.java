package witnessmark.knowledge;

import witnessmark.language.Language;

/** A coaching point or towing-prep reminder in both languages, with its reason (may be empty). */
public sealed interface Advice extends BothLanguages permits CoachingAdvice, TowAdvice {
    String id();

    String whyEnglish();

    String whySpanish();

    /** The reason; empty where none is given. */
    default String why(Language language) {
        return switch (language) {
            case ENGLISH -> whyEnglish();
            case SPANISH -> whySpanish();
        };
    }
}
