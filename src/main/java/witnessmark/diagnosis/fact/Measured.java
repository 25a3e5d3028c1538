package witnessmark.diagnosis.fact;

import org.jspecify.annotations.Nullable;

/**
 * A measured value with the limits given for it, all in the measure's unit.
 *
 * @param low low limit, null where none was given
 * @param high high limit, null where none was given
 * @param limitCounts whether a value at its limit is beyond it already
 * @param unit symbol of the unit
 * @param limitFrom whose limit it is; empty where no limit was given
 * @param asRead the same in the units in which they were read, to be said so
 */
public record Measured(
        String measure,
        double value,
        @Nullable Double low,
        @Nullable Double high,
        boolean limitCounts,
        String unit,
        String limitFrom,
        AsRead asRead) {

    /**
     * Value and limits in the units in which they were read.
     *
     * @param unit symbol of the value's unit
     * @param limitUnit symbol of the limits' unit; that of the value where none was given
     */
    public record AsRead(double value, String unit, @Nullable Double low, @Nullable Double high, String limitUnit) {}

    /** One that was read in the measure's unit. */
    public Measured(
            String measure,
            double value,
            @Nullable Double low,
            @Nullable Double high,
            boolean limitCounts,
            String unit,
            String limitFrom) {
        this(measure, value, low, high, limitCounts, unit, limitFrom, new AsRead(value, unit, low, high, unit));
    }

    public boolean isBelow() {
        return low != null && (value < low || limitCounts && value == low);
    }

    public boolean isAbove() {
        return high != null && (value > high || limitCounts && value == high);
    }

    /** Whether a low limit is given and kept. */
    public boolean isWithinLow() {
        return low != null && !isBelow();
    }

    /** Whether a high limit is given and kept. */
    public boolean isWithinHigh() {
        return high != null && !isAbove();
    }

    public boolean hasLow() {
        return low != null;
    }

    public boolean hasHigh() {
        return high != null;
    }

    /** Whether a limit was given on one side only, and it is not that one. */
    public boolean misses(Yields.Side side) {
        return hasLow() != hasHigh() && (side == Yields.Side.BELOW) == hasHigh();
    }
}
