package witnessmark.diagnosis;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import witnessmark.casefile.EarlierSample;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Measurement;
import witnessmark.diagnosis.fact.Yields.Side;
import witnessmark.knowledge.Measure;

/**
 * How a value without a limit of its unit reads: against what is usual, and against the same unit's earlier samples. A rise
 * tells more than a figure of other units: it makes a value high that is still usual, and where there is none a value
 * that is high elsewhere is left open, as this unit has always had it.
 */
public record ReadSample(Measure measure, Measurement read) {

    /** Empty where the case gives a limit, or nothing is known to read the value against. */
    public static Optional<ReadSample> of(Measure measure, Measurement read) {
        boolean comparable = measure.usual().isPresent()
                || measure.rise().isPresent() && !read.earlier().isEmpty();
        return read.limits().isEmpty() && comparable ? Optional.of(new ReadSample(measure, read)) : Optional.empty();
    }

    /** What it comes to on each side of which it says something. */
    public Map<Side, FindingState> sides() {
        Map<Side, FindingState> sides = new EnumMap<>(Side.class);
        low().ifPresent(state -> sides.put(Side.BELOW, state));
        high().ifPresent(state -> sides.put(Side.ABOVE, state));
        return sides;
    }

    /** Whether the value is too low: present, absent, or unsure where that cannot be told; empty where it says nothing of it. */
    private Optional<FindingState> low() {
        return measure.usual().flatMap(usual -> state(usual.goodFrom(), usual.badUnder(), true));
    }

    /** Whether the value is too high, as {@link #low}. */
    private Optional<FindingState> high() {
        Optional<FindingState> usual = measure.usual().flatMap(u -> state(u.goodTo(), u.badOver(), false));
        Optional<FindingState> risen = highestEarlier().flatMap(this::risen);
        if (risen.isEmpty() || risen.get() == FindingState.PRESENT) {
            return risen.or(() -> usual);
        }
        return usual.filter(FindingState.PRESENT::equals).isPresent() ? Optional.of(FindingState.UNSURE) : risen;
    }

    /** The highest sample before, where a rise over it tells something. */
    public Optional<EarlierSample> highestEarlier() {
        return measure.rise().isEmpty()
                ? Optional.empty()
                : read.earlier().stream().reduce((one, other) -> other.value() > one.value() ? other : one);
    }

    private Optional<FindingState> risen(EarlierSample before) {
        return measure.rise()
                .map(rise -> rise.isRise(value(), inOwnUnit(before.value())))
                .map(rise -> rise ? FindingState.PRESENT : FindingState.ABSENT);
    }

    private Optional<FindingState> state(OptionalDouble good, OptionalDouble bad, boolean lowIsBad) {
        if (good.isEmpty() && bad.isEmpty()) {
            return Optional.empty();
        }
        if (bad.isPresent() && beyond(value(), bad.getAsDouble(), lowIsBad)) {
            return Optional.of(FindingState.PRESENT);
        }
        boolean isGood = good.isPresent() && !beyond(value(), good.getAsDouble(), lowIsBad);
        return Optional.of(isGood ? FindingState.ABSENT : FindingState.UNSURE);
    }

    private static boolean beyond(double value, double bound, boolean lowIsBad) {
        return lowIsBad ? value < bound : value > bound;
    }

    private double value() {
        return inOwnUnit(read.value());
    }

    private double inOwnUnit(double value) {
        return read.unit().convert(value, measure.unit());
    }
}
