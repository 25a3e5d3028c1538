package witnessmark.knowledge;

import witnessmark.language.Language;

/** A caution in both languages. */
public record Caution(String id, String english, String spanish) {

    public String in(Language language) {
        return switch (language) {
            case ENGLISH -> english;
            case SPANISH -> spanish;
        };
    }
}
