package witnessmark.casefile;

import java.util.Optional;
import java.util.regex.Pattern;

/** The name of a case: lower-case letters, digits and hyphens, 1 to 40, the first a letter or digit. */
public record CaseId(String text) implements Comparable<CaseId> {
    private static final Pattern FORM = Pattern.compile("[a-z0-9][a-z0-9-]{0,39}");

    public CaseId {
        if (!FORM.matcher(text).matches()) {
            throw new CaseRefused(
                    "case: '" + CheckedText.shown(text) + "' is not a case id",
                    "use lower-case letters, digits and hyphens, 1 to 40, beginning with a letter or digit");
        }
    }

    /** The id that the text is; empty if it is none. */
    public static Optional<CaseId> of(String text) {
        return FORM.matcher(text).matches() ? Optional.of(new CaseId(text)) : Optional.empty();
    }

    @Override
    public int compareTo(CaseId other) {
        return text.compareTo(other.text);
    }

    @Override
    public String toString() {
        return text;
    }
}
