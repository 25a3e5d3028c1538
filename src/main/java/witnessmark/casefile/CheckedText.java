package witnessmark.casefile;

import java.util.regex.Pattern;

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
        String plain = text.replace("\r\n", "\n").replace('\r', '\n');
        refuseLongerThan(LONGEST, field, plain);
        for (int i = 0; i < plain.length(); i += Character.charCount(plain.codePointAt(i))) {
            refuseControl(field, plain.codePointAt(i), i);
        }
        return plain;
    }

    /** Text of one line, without its outer blanks; empty stays empty. */
    public static String line(String field, String text) {
        String plain = free(field, text.strip());
        refuseLongerThan(LONGEST_LINE, field, plain);
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

    /** The text as it may stand in a message: short, on one line, control characters named by number. */
    public static String shown(String text) {
        StringBuilder out = new StringBuilder();
        int end = Math.min(text.length(), 60);
        for (int i = 0; i < end; i++) {
            char c = text.charAt(i);
            out.append(isRefused(c) || c == '\n' || c == '\t' || Character.isSurrogate(c) ? codePoint(c) : c);
        }
        return end < text.length() ? out + "..." : out.toString();
    }

    private static void refuseLongerThan(int longest, String field, String text) {
        if (text.length() > longest) {
            throw new CaseRefused(
                    field + ": the text has " + text.length() + " characters", "keep it to " + longest + " at most");
        }
    }

    private static void refuseControl(String field, int codePoint, int index) {
        if (isRefused(codePoint)) {
            throw new CaseRefused(
                    field + ": character " + codePoint(codePoint) + " at place " + (index + 1) + " cannot be kept",
                    "remove it");
        }
    }

    private static boolean isRefused(int codePoint) {
        return (Character.isISOControl(codePoint) && codePoint != '\n' && codePoint != '\t')
                || (codePoint >= Character.MIN_SURROGATE && codePoint <= Character.MAX_SURROGATE)
                || (codePoint & 0xFFFE) == 0xFFFE;
    }

    private static String codePoint(int codePoint) {
        return String.format("U+%04X", codePoint);
    }
}
