package witnessmark.knowledge;

import java.util.List;
import java.util.Optional;
import witnessmark.gearbox.Unit;

/**
 * Something measured on the truck or the bench.
 *
 * @param typical a typical value to verify, shown as help and never used as a limit; empty if none
 * @param limitCounts whether a value at its limit is beyond it already ("renew at 0.8"); else it is still within it
 * @param plausible what is read on sound and on failed trucks, in {@code unit}; outside it a value is asked again
 * @param possible what can be at all, in {@code unit}; outside it a value is a slip
 * @param usual what it is read against where the case gives no limit; empty where only the unit's own limit tells
 * @param rise how far it must have risen over the unit's own earlier samples to count as high; empty where these tell nothing
 * @param below finding that is present below the low limit
 * @param above finding that is present above the high limit
 */
public record Measure(
        String id,
        String title,
        Unit unit,
        String typical,
        boolean limitCounts,
        Bounds plausible,
        Bounds possible,
        Optional<UsualValues> usual,
        Optional<Rise> rise,
        Optional<String> below,
        Optional<String> above,
        List<String> sources) {

    /** From where to where values reach, both ends included. */
    public record Bounds(double from, double to) {
        static final Bounds NONE = new Bounds(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

        public boolean holds(double value) {
            return value >= from && value <= to;
        }
    }

    /** How far a value can be believed. */
    public enum Belief {
        PLAUSIBLE,
        DOUBTFUL,
        IMPOSSIBLE
    }

    /** How far a value read can be believed; {@code in} must measure what the measure's unit does. */
    public Belief belief(double value, Unit in) {
        double own = in.convert(value, unit);
        if (!possible.holds(own)) {
            return Belief.IMPOSSIBLE;
        }
        return plausible.holds(own) ? Belief.PLAUSIBLE : Belief.DOUBTFUL;
    }
}
