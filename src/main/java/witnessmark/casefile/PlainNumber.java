package witnessmark.casefile;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Finite numbers, and the one way to write each: the same on every Java version, so that hashes agree. */
public final class PlainNumber {
    private static final int LONGEST_PLAIN = 20;

    private PlainNumber() {}

    /** The number if it is finite, minus zero made zero; {@link CaseRefused} otherwise. */
    public static double checked(String field, double value) {
        if (!Double.isFinite(value)) {
            throw new CaseRefused(field + ": " + value + " is not a number", "give a number such as 3.9");
        }
        return value + 0.0;
    }

    /** The shortest of 15, 16 or 17 significant digits that reads back as the same double. */
    public static String of(double value) {
        BigDecimal exact = new BigDecimal(value);
        BigDecimal shortest = exact.round(new MathContext(15));
        for (int digits = 16; shortest.doubleValue() != value; digits++) {
            shortest = exact.round(new MathContext(digits));
        }
        return written(shortest);
    }

    /** The number with at most so many digits after the point. */
    public static String rounded(double value, int decimals) {
        return written(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP));
    }

    private static String written(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        boolean plain = Math.abs(stripped.scale()) <= LONGEST_PLAIN;
        return plain ? stripped.toPlainString() : stripped.toString();
    }
}
