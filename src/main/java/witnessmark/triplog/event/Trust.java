package witnessmark.triplog.event;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/**
 * Which switches and positions of a log can be believed. One that never changes tells nothing, whatever it shows; a
 * clutch signal that has the pedal up at starts from rest, or down in most of the driving, is dead or set wrong.
 */
final class Trust {
    private static final Set<Signal> WATCHED = Set.of(
            Signal.CLUTCH,
            Signal.CLUTCH_PEDAL,
            Signal.ACCELERATOR,
            Signal.ENGINE_TORQUE,
            Signal.LEVER,
            Signal.NEUTRAL_SWITCH,
            Signal.REVERSE_SWITCH,
            Signal.CURRENT_GEAR,
            Signal.RANGE_KNOB);

    private static final double DRIVEN_KMH = 10;
    private static final long ENOUGH_ROWS = 300;
    private static final double MOST_PRESSED = 0.5;
    private static final int LEAST_STARTS = 2;
    private static final double MOST_STARTS_WITHOUT = 0.34;

    /** What each signal showed first, by ordinal; NaN for one not given so far. */
    private final double[] first = new double[Signal.count()];

    private final double drivenRpm;
    private final boolean[] changes = new boolean[Signal.count()];
    private long driven;
    private long pressed;
    private int starts;
    private int startsWithout;
    private boolean stood;
    private boolean moved;

    /** @param idleRpm engine speed at idle */
    Trust(double idleRpm) {
        drivenRpm = 1.3 * idleRpm;
        Arrays.fill(first, Double.NaN);
        Arrays.fill(changes, true);
        WATCHED.forEach(s -> changes[s.ordinal()] = false);
    }

    /** Looks through the rows for signals that have shown only one value so far. */
    void over(RowBlock block) {
        drove(block);
        for (Signal signal : WATCHED) {
            if (!changes[signal.ordinal()] && block.gives(signal)) {
                changes[signal.ordinal()] = showsAnother(signal, block);
            }
        }
    }

    private boolean showsAnother(Signal signal, RowBlock block) {
        double[] column = block.column(signal);
        double before = first[signal.ordinal()];
        for (int i = 0; i < block.size(); i++) {
            double now = column[i];
            if (Double.isNaN(before)) {
                before = now;
            } else if (now != before && !Double.isNaN(now) && state(signal, now) != state(signal, before)) {
                return true;
            }
        }
        first[signal.ordinal()] = before;
        return false;
    }

    private static double state(Signal signal, double value) {
        return signal == Signal.CLUTCH_PEDAL ? (value > Moment.PRESSED_PERCENT ? 1 : 0) : value;
    }

    private boolean isGiven(Signal signal) {
        return changes[signal.ordinal()] || !Double.isNaN(first[signal.ordinal()]);
    }

    /** Whether the signal has shown more than one value by now; true for those that need not. */
    boolean changes(Signal signal) {
        return changes[signal.ordinal()];
    }

    /** Whether a signal was given and never changed. */
    boolean isStuck(Signal signal) {
        return !changes[signal.ordinal()] && isGiven(signal);
    }

    /** Whether road speed has been 0 in all rows that give it; then it may as well be dead. */
    boolean isAlwaysStanding() {
        return stood && !moved;
    }

    /** Counts the rows of driving in which the pedal is shown pressed. */
    private void drove(RowBlock block) {
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] engine = block.column(Signal.ENGINE_SPEED);
        double[] clutch = block.column(Signal.CLUTCH);
        double[] pedal = block.column(Signal.CLUTCH_PEDAL);
        int size = block.size();
        for (int i = 0; i < size && !(moved && stood); i++) {
            moved |= road[i] > 0;
            stood |= road[i] == 0;
        }
        double least = drivenRpm;
        int rows = 0;
        int down = 0;
        for (int i = 0; i < size; i++) {
            if (road[i] > DRIVEN_KMH && engine[i] > least) {
                rows++;
                down += Moment.isPressed(clutch[i], pedal[i]) ? 1 : 0;
            }
        }
        driven += rows;
        pressed += down;
    }

    void started(boolean byPedal) {
        starts++;
        startsWithout += byPedal ? 0 : 1;
    }

    /** Whether the log has a clutch signal that changes and that nothing contradicts so far. */
    boolean isPedalBelieved() {
        return (changes(Signal.CLUTCH) || changes(Signal.CLUTCH_PEDAL))
                && clutchDoubt().isEmpty();
    }

    /** Why the clutch signal is not believed; empty as long as nothing contradicts it. */
    Optional<String> clutchDoubt() {
        if (driven > ENOUGH_ROWS && pressed > MOST_PRESSED * driven) {
            return Optional.of("is pressed in most of the driving: stuck, or wired the wrong way round");
        }
        if (startsWithout >= LEAST_STARTS && startsWithout > MOST_STARTS_WITHOUT * starts) {
            return Optional.of(
                    "stays up at " + startsWithout + " of " + starts + " starts from rest: dead, or set wrong");
        }
        return Optional.empty();
    }

    /** Every signal that is not believed, with the reason as the end of a sentence about it. */
    Map<Signal, String> doubts() {
        Map<Signal, String> doubts = new EnumMap<>(Signal.class);
        WATCHED.stream()
                .filter(this::isStuck)
                .forEach(s -> doubts.put(s, "never changes, though the truck was driven"));
        clutchDoubt().ifPresent(why -> {
            for (Signal signal : new Signal[] {Signal.CLUTCH, Signal.CLUTCH_PEDAL}) {
                if (isGiven(signal)) {
                    doubts.putIfAbsent(signal, why);
                }
            }
        });
        return doubts;
    }
}
