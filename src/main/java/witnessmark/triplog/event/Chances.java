package witnessmark.triplog.event;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** What the log held: the chances that events had, and how well the rows could show them. Added up as rows pass. */
public final class Chances {
    private static final double MOVING_KMH = 0.8;
    private static final double PULLING_KMH = 10;

    private final Map<EventKind.Chance, Double> counts = new EnumMap<>(EventKind.Chance.class);
    private final Map<Signal, String> doubts = new EnumMap<>(Signal.class);
    private Optional<String> gearDoubt = Optional.empty();
    private double paceSeconds;
    private double coveredSeconds;
    private double movingSeconds;
    private double pullingSeconds;
    private double gearKnownSeconds;
    private double km;

    void count(EventKind.Chance chance) {
        counts.merge(chance, 1.0, Double::sum);
    }

    /** Notes why a signal of this log is not believed: the end of a sentence about it. */
    void doubt(Signal signal, String why) {
        doubts.put(signal, why);
    }

    /** Notes why the gears of this log are not believed. */
    void doubtGears(String why) {
        gearDoubt = Optional.of(why);
    }

    /** Notes from which time to which a new road speed comes, where that is more seldom than rows; else 0. */
    void pace(double seconds) {
        paceSeconds = seconds;
    }

    /** Seconds from one road speed of this one log to the next, where that is more seldom than rows; else 0. */
    public double paceSeconds() {
        return paceSeconds;
    }

    /** Why the gears of this one log are not believed. */
    public Optional<String> gearDoubt() {
        return gearDoubt;
    }

    /** The signals of this one log that are not believed, with the reason. */
    public Map<Signal, String> doubts() {
        return Collections.unmodifiableMap(doubts);
    }

    /**
     * Adds the time and distance of the rows.
     *
     * @param pullingRpm engine speed from which a gear should show
     * @param moment knows whether the pedal is pressed in a row, so far as it is believed
     */
    void covered(RowBlock block, int[] inHand, int from, int to, double pullingRpm, Moment moment) {
        double[] secondsBefore = block.secondsBefore();
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] engine = block.column(Signal.ENGINE_SPEED);
        double[] clutch = moment.believedClutch();
        double[] pedal = moment.believedPedal();
        double covered = coveredSeconds;
        double moving = movingSeconds;
        double pulling = pullingSeconds;
        double gearKnown = gearKnownSeconds;
        double distance = km;
        for (int i = from; i < to; i++) {
            double seconds = secondsBefore[i];
            covered += seconds;
            if (road[i] >= MOVING_KMH) {
                moving += seconds;
                distance += road[i] * seconds / 3600;
            }
            if (road[i] > PULLING_KMH && engine[i] > pullingRpm && !Moment.isPressed(clutch[i], pedal[i])) {
                pulling += seconds;
                gearKnown += inHand[i] >= 0 ? seconds : 0;
            }
        }
        coveredSeconds = covered;
        movingSeconds = moving;
        pullingSeconds = pulling;
        gearKnownSeconds = gearKnown;
        km = distance;
    }

    public void add(Chances other) {
        other.counts.forEach((chance, count) -> counts.merge(chance, count, Double::sum));
        coveredSeconds += other.coveredSeconds;
        movingSeconds += other.movingSeconds;
        pullingSeconds += other.pullingSeconds;
        gearKnownSeconds += other.gearKnownSeconds;
        km += other.km;
    }

    /** How many there were; for the distance, in units of 100 km. */
    public double of(EventKind.Chance chance) {
        return chance == EventKind.Chance.DISTANCE ? km / 100 : counts.getOrDefault(chance, 0.0);
    }

    public double coveredSeconds() {
        return coveredSeconds;
    }

    public double movingSeconds() {
        return movingSeconds;
    }

    /** Time above idle and 10 km/h with the pedal up. */
    public double pullingSeconds() {
        return pullingSeconds;
    }

    public double km() {
        return km;
    }

    /** Share of the time above idle and 10 km/h, pedal up, in which a gear fitted; 0 if there was no such time. */
    public double gearKnownShare() {
        return pullingSeconds > 0 ? gearKnownSeconds / pullingSeconds : 0;
    }
}
