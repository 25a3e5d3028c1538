package witnessmark.casefile;

import java.util.regex.Pattern;
import witnessmark.yaml.PlainText;

/** What text a case takes: bounded, and free of characters that could drive a terminal or break a file. */
public final class CheckedText {
    /** The longest free text, in characters. */
    public static final int LONGEST = 20_000;

    /** The longest name, title or other text of one line, in characters. */
    public static final int LONGEST_LINE = 200;

    private static final int LONGEST_ID = 60;
    private static final Pattern ID = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final Pattern SHA256 = Pattern.compile("[0-9a-f]{64}");

    private CheckedText() {}

    /** Free text with its line ends made plain; new lines and tabs stay, {@link CaseRefused} for other control characters. */
    public static String free(String field, String text) {
        String plain = PlainText.withPlainLineEnds(text);
        refuse(LONGEST, field, plain);
        return plain;
    }

    /** Text of one line, without its outer blanks; empty stays empty. */
    public static String line(String field, String text) {
        String plain = free(field, text.strip());
        refuse(LONGEST_LINE, field, plain);
        if (plain.indexOf('\n') >= 0) {
            throw new CaseRefused(field + ": the text has more than one line", "write it on one line");
        }
        return plain;
    }

    /** Text of one line that must not be empty. */
    public static String filledLine(String field, String text) {
        String plain = line(field, text);
        if (plain.isEmpty()) {
            throw new CaseRefused(field + ": nothing is written", "write at least one word");
        }
        return plain;
    }

    /** An id of the knowledge base or of evidence: lower-case words joined by hyphens. */
    public static String id(String field, String text) {
        if (text.length() > LONGEST_ID || !ID.matcher(text).matches()) {
            throw new CaseRefused(
                    field + ": '" + shown(text) + "' is not an id",
                    "use lower-case words joined by hyphens, at most " + LONGEST_ID + " characters");
        }
        return text;
    }

    /** A SHA-256 written as 64 lower-case hexadecimal digits. */
    public static String sha256(String field, String text) {
        if (!SHA256.matcher(text).matches()) {
            throw new CaseRefused(
                    field + ": '" + shown(text) + "' is not a SHA-256", "give 64 digits from 0-9 and a-f, lower case");
        }
        return text;
    }

    /** The text as it may stand in a message. */
    public static String shown(String text) {
        return PlainText.shown(text);
    }

    private static void refuse(int longest, String field, String text) {
        PlainText.refusal(text, longest).ifPresent(refusal -> {
            throw new CaseRefused(field + ": " + refusal.what(), refusal.mend());
        });
    }
}
