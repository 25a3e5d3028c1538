package witnessmark.document;

import java.util.Locale;

/** How far something moves the odds, as people read it: the factor, and whether the odds grow or shrink by it. */
public final class OddsFactor {
    /** Beyond that a factor says no more than that the matter is settled. */
    private static final double MOST_SAID = 1000;

    private OddsFactor() {}

    /** Ten times the decimal logarithm of the factor becomes ×16 or ÷4.2; whole from ten on, ×1000+ from a thousand on. */
    public static String text(double decibans) {
        double factor = Math.pow(10, Math.abs(decibans) / 10);
        String digits = factor >= MOST_SAID
                ? "%.0f+".formatted(MOST_SAID)
                : String.format(Locale.ROOT, factor < 9.95 ? "%.1f" : "%.0f", factor);
        return (decibans < 0 ? "÷" : "×") + digits;
    }
}
