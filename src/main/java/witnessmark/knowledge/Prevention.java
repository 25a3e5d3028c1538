package witnessmark.knowledge;

import witnessmark.language.Language;

/** A step against a return of damage whose cause is of the class, in both languages. */
public record Prevention(String classId, String english, String spanish) {

    public String in(Language language) {
        return switch (language) {
            case ENGLISH -> english;
            case SPANISH -> spanish;
        };
    }
}
