package witnessmark.triplog.read;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;

/** Numbers as they stand in a CSV field, read from bytes as mantissa and decimals without making a string. */
final class NumberText {
    static final double[] POWERS = new double[23];

    static {
        POWERS[0] = 1;
        for (int i = 1; i < POWERS.length; i++) {
            POWERS[i] = POWERS[i - 1] * 10;
        }
    }

    /** More digits than this do not fit a long; such a field is left to the slow way. */
    private static final int MOST_DIGITS = 18;

    private static final Set<String> ABSENT =
            Set.of("", "-", "--", "---", "nan", "na", "n/a", "null", "none", "nil", "inf", "?", "invalid", "error");
    private static final Set<String> ON = Set.of(
            "on",
            "true",
            "yes",
            "y",
            "pressed",
            "set",
            "high",
            "hi",
            "h",
            "active",
            "engaged",
            "applied",
            "down",
            "depressed",
            "ein",
            "si",
            "sí");
    private static final Set<String> OFF = Set.of(
            "off",
            "false",
            "no",
            "n",
            "neutral",
            "released",
            "not set",
            "low",
            "lo",
            "l",
            "inactive",
            "disengaged",
            "up",
            "aus");

    /** Reverse, where a lever or a gear is written in words; neutral is 0. */
    private static final Set<String> REVERSE = Set.of("r", "rev", "reverse");

    /** What the slow way found. */
    enum Sort {
        NUMBER,
        ABSENT,
        BAD
    }

    private double value;

    double value() {
        return value;
    }

    /** Reads any field the fast way cannot: blanks, quotes, exponents, words for on, off and "no value". */
    Sort read(byte[] bytes, int from, int to, char decimal) {
        String text = new String(bytes, from, Math.min(to - from, 64), StandardCharsets.UTF_8)
                .replace("\"", "")
                .strip()
                .toLowerCase(Locale.ROOT);
        if (ABSENT.contains(text)) {
            return Sort.ABSENT;
        }
        if (isWord(text)) {
            value = ON.contains(text) ? 1 : REVERSE.contains(text) ? -1 : 0;
            return Sort.NUMBER;
        }
        String plain = decimal == ',' ? text.replace(',', '.') : text;
        if (!plain.matches("[+-]?(\\d{1,30}(\\.\\d{0,30})?|\\.\\d{1,30})(e[+-]?\\d{1,3})?")) {
            return Sort.BAD;
        }
        value = Double.parseDouble(plain);
        return Sort.NUMBER;
    }

    /** Whether the text is a word for a state of a switch or a lever. */
    static boolean isWord(String text) {
        String plain = text.strip().toLowerCase(Locale.ROOT);
        return ON.contains(plain) || OFF.contains(plain) || REVERSE.contains(plain);
    }

    static int mostDigits() {
        return MOST_DIGITS;
    }
}
