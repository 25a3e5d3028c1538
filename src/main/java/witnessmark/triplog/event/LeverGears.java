package witnessmark.triplog.event;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.signal.Signal;

/**
 * The gear that lever and range knob show where no ratio does, as with the pedal down. Loggers number the lever's positions
 * each in its own way; which is which is learnt from the gears that were in hand there. The range follows its knob while
 * the lever is out.
 */
final class LeverGears {
    private static final int ENOUGH = 2;
    private static final double MOSTLY = 0.8;
    /** So many positions in one order are no chance. */
    private static final int SEVERAL = 3;

    private final GearTable table;
    /** For each number of a lever position the table's lever of each gear that was in hand there. */
    private final Map<Double, List<Integer>> seen = new HashMap<>();

    private double lever = Double.NaN;
    private Optional<KnobGear.Range> range = Optional.empty();

    LeverGears(GearTable table) {
        this.table = table;
    }

    /** To be asked for every row that is looked at. */
    void row(Moment m) {
        lever = m.get(Signal.LEVER);
        double knob = m.get(Signal.RANGE_KNOB);
        if (m.leverPosition() == 0 && !Double.isNaN(knob)) {
            range = Optional.of(knob > 0.5 ? KnobGear.Range.HIGH : KnobGear.Range.LOW);
        }
    }

    void settled(GearRun run) {
        if (lever > 0) {
            seen.computeIfAbsent(lever, l -> new ArrayList<>())
                    .add(table.gear(run.gear).lever());
        }
    }

    /**
     * The gear in which the lever stands now: of those that range and splitter may make of it, the one that turns the input
     * least. Empty in neutral, in reverse, and where the position was never seen with a gear in hand.
     */
    Optional<KnobGear> least() {
        return learnt().or(this::inOrder).flatMap(position -> table.gears().stream()
                .filter(g -> !g.isReverse() && g.lever() == position)
                .filter(g -> range.isEmpty() || g.range() == range.get() || g.range() == KnobGear.Range.NONE)
                .min(Comparator.comparingDouble(KnobGear::ratio)));
    }

    /** Whether the knob says that the range, or the lever that its position, is not the one of this gear. */
    boolean contradicts(KnobGear gear) {
        boolean otherRange = range.isPresent() && gear.range() != KnobGear.Range.NONE && gear.range() != range.get();
        return otherRange || learnt().filter(l -> l != gear.lever()).isPresent();
    }

    private Optional<Integer> learnt() {
        if (!(lever > 0)) {
            return Optional.empty();
        }
        List<Integer> levers = seen.getOrDefault(lever, List.of());
        return levers.stream()
                .filter(l -> levers.size() >= ENOUGH
                        && levers.stream().filter(l::equals).count() >= MOSTLY * levers.size())
                .findFirst();
    }

    /** A position seen once is known as well where the numbers of several run as the levers do. */
    private Optional<Integer> inOrder() {
        Set<Double> apart = seen.entrySet().stream()
                .flatMap(e -> e.getValue().stream().map(l -> e.getKey() - l))
                .collect(Collectors.toSet());
        boolean once = seen.containsKey(lever) && seen.size() >= SEVERAL && apart.size() == 1;
        return once ? Optional.of(seen.get(lever).get(0)) : Optional.empty();
    }

    void interrupted() {
        range = Optional.empty();
        lever = Double.NaN;
    }
}
