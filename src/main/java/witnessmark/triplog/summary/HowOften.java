package witnessmark.triplog.summary;

import java.util.Locale;

/** Rates of rows in words. */
final class HowOften {
    private static final String[] NUMBERS = {"no", "one", "two", "three", "four", "five", "six", "seven", "eight"};

    private HowOften() {}

    /** {@code 10 times a second}, {@code once a second}, {@code once every 5 s}. */
    static String of(double hertz) {
        long whole = Math.round(hertz);
        if (hertz >= 1.5) {
            return whole + " times a second";
        }
        return hertz > 0.75
                ? "once a second"
                : String.format(Locale.ROOT, hertz < 0.52 ? "once every %.0f s" : "once every %.1f s", 1 / hertz);
    }

    /** {@code two a second are needed}. */
    static String needed(double hertz) {
        if (hertz < 1) {
            return String.format(Locale.ROOT, "one every %.0f s is needed", 1 / hertz);
        }
        int whole = (int) Math.ceil(hertz);
        String count = whole < NUMBERS.length ? NUMBERS[whole] : String.valueOf(whole);
        return count + " a second " + (whole == 1 ? "is" : "are") + " needed";
    }
}
