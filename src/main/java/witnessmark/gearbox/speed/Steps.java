package witnessmark.gearbox.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Lever;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;

/**
 * The steps of a box.
 *
 * @param inOrder each gear to the next faster one
 * @param byLever whole lever steps within one range with the splitter left alone; the same as in order where nothing
 *     is split
 */
public record Steps(List<ShiftStep> inOrder, List<ShiftStep> byLever) {

    /**
     * How even the whole lever steps of high range are.
     *
     * @param least smallest share of engine speed that a step takes
     * @param most largest share
     */
    public record Evenness(double least, double most, Verdict verdict) {

        /** Bounds on (most - least) / most: judgement. */
        public enum Verdict {
            /** Up to 0.05: equal within the rounding of tooth counts. */
            EQUAL(0.05),
            /** Up to 0.20: one drop can be learned. */
            NEARLY_EQUAL(0.20),
            UNEVEN(1);

            private final double limit;

            Verdict(double limit) {
                this.limit = limit;
            }

            private static Verdict of(double spread) {
                return Stream.of(values())
                        .filter(verdict -> spread <= verdict.limit)
                        .findFirst()
                        .orElse(UNEVEN);
            }
        }
    }

    public static Steps of(TruckProfile truck) {
        List<Gear> gears = truck.gears().forward();
        List<ShiftStep> inOrder = new ArrayList<>();
        List<ShiftStep> byLever = new ArrayList<>();
        for (int i = 0; i + 1 < gears.size(); i++) {
            if (gears.get(i).ratio() > gears.get(i + 1).ratio()) {
                inOrder.add(new ShiftStep(gears.get(i), gears.get(i + 1)));
            }
            nextByLever(gears, i).ifPresent(byLever::add);
        }
        return new Steps(List.copyOf(inOrder), List.copyOf(byLever));
    }

    private static Optional<ShiftStep> nextByLever(List<Gear> gears, int index) {
        Gear from = gears.get(index);
        return gears.subList(index + 1, gears.size()).stream()
                .filter(to -> to.range() == from.range() && to.split() == from.split())
                .findFirst()
                .map(to -> new ShiftStep(from, to));
    }

    /** Evenness of high range's lever steps between repeating gears; empty with fewer than two such steps. */
    public Optional<Evenness> highRangeEvenness() {
        List<Double> drops = byLever.stream()
                .filter(step ->
                        step.from().range() == Range.HIGH && step.from().lever().kind() == Lever.Kind.MAIN)
                .map(ShiftStep::dropShare)
                .sorted()
                .toList();
        if (drops.size() < 2) {
            return Optional.empty();
        }
        double least = drops.get(0);
        double most = drops.get(drops.size() - 1);
        return Optional.of(new Evenness(least, most, Evenness.Verdict.of((most - least) / most)));
    }
}
