package witnessmark.yaml;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Text from outside: which of it can be kept, how it may stand in a message, and what is a number in it. */
public final class PlainText {
    private static final int LONGEST_SHOWN = 60;
    private static final int LONGEST_NUMBER = 400;
    /** The floats of the core schema, without infinity and not-a-number (YAML 1.2.2, section 10.3.2). */
    private static final Pattern NUMBER = Pattern.compile("[-+]?(\\.[0-9]+|[0-9]+(\\.[0-9]*)?)([eE][-+]?[0-9]+)?");

    private PlainText() {}

    /** Why a text is not taken, and what to do about it. */
    public record Refusal(String what, String mend) {}

    /** The text with each line ended by a new line alone. */
    public static String withPlainLineEnds(String text) {
        return text.indexOf('\r') < 0 ? text : text.replace("\r\n", "\n").replace('\r', '\n');
    }

    /** Why the text cannot be kept: too long, or a control character other than new line and tab. */
    public static Optional<Refusal> refusal(String text, int longest) {
        if (text.length() > longest) {
            return Optional.of(
                    new Refusal("the text has " + text.length() + " characters", "keep it to " + longest + " at most"));
        }
        for (int i = 0; i < text.length(); ) {
            int codePoint = text.codePointAt(i);
            if (isRefused(codePoint)) {
                return Optional.of(new Refusal(
                        "character " + codePoint(codePoint) + " at place " + (i + 1) + " cannot be kept", "remove it"));
            }
            i += Character.charCount(codePoint);
        }
        return Optional.empty();
    }

    /** The text as it may stand in a message: short, on one line, control characters named by number. */
    public static String shown(String text) {
        StringBuilder out = new StringBuilder();
        int end = Math.min(text.length(), LONGEST_SHOWN);
        for (int i = 0; i < end; i++) {
            char c = text.charAt(i);
            out.append(isRefused(c) || c == '\n' || c == '\t' ? codePoint(c) : c);
        }
        return end < text.length() ? out + "..." : out.toString();
    }

    /** The finite number that the text writes in digits; empty if it writes none. */
    public static OptionalDouble number(String text) {
        String plain = text.strip();
        boolean written =
                plain.length() <= LONGEST_NUMBER && NUMBER.matcher(plain).matches();
        double value = written ? Double.parseDouble(plain) : Double.NaN;
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    static String codePoint(int codePoint) {
        return String.format("U+%04X", codePoint);
    }

    /** Control characters, halves of a pair and what Unicode keeps from being a character. */
    private static boolean isRefused(int codePoint) {
        return (Character.isISOControl(codePoint) && codePoint != '\n' && codePoint != '\t')
                || (codePoint >= Character.MIN_SURROGATE && codePoint <= Character.MAX_SURROGATE)
                || (codePoint & 0xFFFE) == 0xFFFE;
    }
}
