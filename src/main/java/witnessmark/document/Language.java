package witnessmark.document;

import java.util.Arrays;
import java.util.Optional;

/** The languages of the card and the sheet that leave the shop. */
public enum Language {
    ENGLISH("en"),
    SPANISH("es");

    private final String tag;

    Language(String tag) {
        this.tag = tag;
    }

    /** Its language tag (BCP 47). */
    public String tag() {
        return tag;
    }

    /** The language of this tag; empty if it is none of them. */
    public static Optional<Language> parse(String tag) {
        return Arrays.stream(values()).filter(l -> l.tag.equals(tag)).findFirst();
    }
}
