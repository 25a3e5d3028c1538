package witnessmark.document;

import java.util.Arrays;
import java.util.Optional;

/** The forms a document is written in. */
public enum Form {
    /** One file that needs nothing beside it. */
    HTML("html"),
    PDF("pdf"),
    MARKDOWN("md");

    private final String extension;

    Form(String extension) {
        this.extension = extension;
    }

    /** Ending of its files, without the dot; also the word for it. */
    public String extension() {
        return extension;
    }

    /** The form so named; empty if there is none. */
    public static Optional<Form> parse(String word) {
        return Arrays.stream(values()).filter(f -> f.extension.equals(word)).findFirst();
    }
}
