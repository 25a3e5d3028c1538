package witnessmark.language;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** The languages the program speaks. */
public enum Language {
    ENGLISH("en"),
    SPANISH("es");

    /** Their tags, for messages. */
    public static final String TAGS = Arrays.stream(values()).map(Language::tag).collect(Collectors.joining(" or "));

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
