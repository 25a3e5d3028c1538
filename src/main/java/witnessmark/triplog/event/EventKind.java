package witnessmark.triplog.event;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import witnessmark.triplog.signal.Signal;

/** The kinds of habit events, with what a log must have for each to be seen. Rates and limits are common practice. */
public enum EventKind {
    LOW_RANGE_ABOVE_CEILING("low range taken above its ceiling", 2, true, Chance.RANGE_DOWNSHIFT),
    OVERDRIVE_TO_LOW("overdrive straight to low range, too fast", 2, true, Chance.RANGE_DOWNSHIFT),
    START_IN_HIGH_RANGE("start from rest in high range", 1, true, Chance.START),
    START_GEAR_TOO_HIGH("start from rest in too high a gear", 1, true, Chance.START),
    COAST_IN_NEUTRAL("long roll at idle, out of gear", 0.5, false, Chance.DISTANCE),
    ROLLING_ENGINE_STOPPED("wheels turning with the engine stopped", 0.1, false, Chance.DISTANCE),
    ENGINE_OVERSPEED("engine above governed speed", 2, false, Chance.DISTANCE),
    LUGGING("pulling hard below the lowest pulling speed", 0.5, true, Chance.DISTANCE),
    SHIFT_WITHOUT_DOUBLE_CLUTCH("lever shift with a single press of the clutch", 8, true, Chance.LEVER_SHIFT),
    SHIFT_WITHOUT_CLUTCH("lever shift without the clutch", 8, true, Chance.LEVER_SHIFT),
    CLUTCH_SLIP("clutch slipping under load, pedal up", 2, true, Chance.DISTANCE),
    RIDING_CLUTCH("foot on the clutch, driving or held on a slope by it", 1, true, Chance.DISTANCE),
    CLUTCH_FLOORED_ROLLING("clutch pressed to the floor while rolling", 4, false, Chance.DISTANCE),
    HOT_OIL("gearbox oil hot", 0.05, false, Chance.DISTANCE),
    RANGE_MOVED_IN_NEUTRAL("range moved with the lever in neutral, rolling", 2, false, Chance.KNOB),
    RANGE_MOVED_IN_REVERSE("range knob moved in reverse, rolling", 2, false, Chance.REVERSING),
    POWER_TAKE_OFF_ON_ROAD("power take-off engaged at road speed", 0.5, false, Chance.DISTANCE),
    CLUTCH_DROPPED("clutch let in at one blow at a start", 5, true, Chance.START),
    DISC_OVERSPEED("clutch disc oversped, pedal down in a low gear", 2, true, Chance.DISTANCE),
    GEAR_AGAINST_ROLL("reverse taken while rolling forward, or the other way", 2, false, Chance.DIRECTION),
    SPLIT_UNDER_TORQUE("split without a break in torque", 5, true, Chance.SPLIT),
    IDLE_TOO_LOW("engine idling below its specification", 0.5, false, Chance.IDLING),
    IMPOSSIBLE_SPEED_JUMP("road speed jumps that no vehicle can make", 2, false, Chance.DISTANCE);

    /** What a log must have held for the event to have had a chance. */
    public enum Chance {
        RANGE_DOWNSHIFT("shift from high to low range", "shifts from high to low range"),
        START("start from rest", "starts from rest"),
        LEVER_SHIFT("lever shift on the move", "lever shifts on the move"),
        SPLIT("split on the move", "splits on the move"),
        DIRECTION("change between forward and reverse", "changes between forward and reverse"),
        IDLING("spell of 20 s idling at rest", "spells of 20 s idling at rest"),
        KNOB("move of the range knob", "moves of the range knob"),
        REVERSING("roll in reverse", "rolls in reverse"),
        DISTANCE("distance on the move", "distance on the move");

        private static final double LEAST_DISTANCE = 0.02;

        private final String words;
        private final String plural;

        Chance(String words, String plural) {
            this.words = words;
            this.plural = plural;
        }

        public String words() {
            return words;
        }

        /** Whether so many say anything; less than two kilometres say nothing of what may happen on a trip. */
        public boolean isEnough(double count) {
            return count >= (this == DISTANCE ? LEAST_DISTANCE : 1);
        }

        /** So many of them in words: {@code 6 starts from rest}; a distance, counted in 100 km, as {@code 412 km}. */
        public String words(double count) {
            if (this == DISTANCE) {
                return String.format(Locale.ROOT, 100 * count < 10 ? "%.1f km" : "%.0f km", 100 * count);
            }
            return String.format(Locale.ROOT, "%.0f %s", count, Math.round(count) == 1 ? words : plural);
        }
    }

    private static final double START_WITHOUT_PEDAL = 2;

    private final String words;
    private final double leastHertz;
    private final boolean needsGear;
    private final Chance chance;

    EventKind(String words, double leastHertz, boolean needsGear, Chance chance) {
        this.words = words;
        this.leastHertz = leastHertz;
        this.needsGear = needsGear;
        this.chance = chance;
    }

    public String words() {
        return words;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Fewest rows a second that still show it, in a log that has a clutch signal where that helps. */
    public double leastHertz() {
        return leastHertz;
    }

    /**
     * Fewest rows a second that still show it. Without a clutch signal a start is told from shifts that passed between
     * the rows only if these come closer.
     */
    public double leastHertz(boolean pedalKnown) {
        return chance == Chance.START && !pedalKnown ? Math.max(leastHertz, START_WITHOUT_PEDAL) : leastHertz;
    }

    /** Whether it is over in a moment, so that a log with fewer rows must not claim it. */
    public boolean isMomentary() {
        return chance != Chance.DISTANCE && chance != Chance.IDLING
                || this == DISC_OVERSPEED
                || this == CLUTCH_SLIP
                || this == RIDING_CLUTCH;
    }

    /** Whether it shows in how engine and road speed stand to each other from moment to moment. */
    public boolean needsRatioAtOnce() {
        return switch (this) {
            case LOW_RANGE_ABOVE_CEILING,
                    OVERDRIVE_TO_LOW,
                    SHIFT_WITHOUT_DOUBLE_CLUTCH,
                    SHIFT_WITHOUT_CLUTCH,
                    CLUTCH_SLIP,
                    DISC_OVERSPEED,
                    SPLIT_UNDER_TORQUE -> true;
            default -> false;
        };
    }

    /** Whether the gear must be known from the ratios. */
    public boolean needsGear() {
        return needsGear;
    }

    public Chance chance() {
        return chance;
    }

    /** Sets of signals, each of which must have at least one member in the log. */
    public List<Set<Signal>> needs() {
        Set<Signal> speed = EnumSet.of(Signal.ROAD_SPEED, Signal.OUTPUT_SHAFT_SPEED);
        Set<Signal> engine = EnumSet.of(Signal.ENGINE_SPEED);
        Set<Signal> load = EnumSet.of(Signal.ACCELERATOR, Signal.ENGINE_TORQUE);
        Set<Signal> pedal = EnumSet.of(Signal.CLUTCH, Signal.CLUTCH_PEDAL);
        Set<Signal> reverse = EnumSet.of(Signal.LEVER, Signal.CURRENT_GEAR, Signal.REVERSE_SWITCH);
        return switch (this) {
            case LOW_RANGE_ABOVE_CEILING,
                    OVERDRIVE_TO_LOW,
                    START_IN_HIGH_RANGE,
                    START_GEAR_TOO_HIGH,
                    COAST_IN_NEUTRAL -> List.of(engine, speed);
                // Wheels turn on a trailer too, and with the axle shafts out.
            case ROLLING_ENGINE_STOPPED -> List.of(engine, EnumSet.of(Signal.OUTPUT_SHAFT_SPEED));
            case ENGINE_OVERSPEED -> List.of(engine);
            case LUGGING -> List.of(engine, speed, load);
            case SHIFT_WITHOUT_DOUBLE_CLUTCH,
                    SHIFT_WITHOUT_CLUTCH,
                    RIDING_CLUTCH,
                    CLUTCH_DROPPED,
                    DISC_OVERSPEED -> List.of(engine, speed, pedal);
            case GEAR_AGAINST_ROLL -> List.of(engine, speed, reverse);
            case CLUTCH_SLIP, SPLIT_UNDER_TORQUE -> List.of(engine, speed, load, pedal);
            case IDLE_TOO_LOW -> List.of(engine, speed);
            case CLUTCH_FLOORED_ROLLING -> List.of(speed, EnumSet.of(Signal.CLUTCH_FLOOR, Signal.CLUTCH_PEDAL));
            case POWER_TAKE_OFF_ON_ROAD -> List.of(speed, EnumSet.of(Signal.POWER_TAKE_OFF));
            case HOT_OIL -> List.of(EnumSet.of(Signal.GEARBOX_OIL));
            case RANGE_MOVED_IN_NEUTRAL -> List.of(
                    speed,
                    EnumSet.of(Signal.RANGE_KNOB),
                    EnumSet.of(Signal.LEVER, Signal.CURRENT_GEAR, Signal.NEUTRAL_SWITCH));
            case RANGE_MOVED_IN_REVERSE -> List.of(speed, EnumSet.of(Signal.RANGE_KNOB), reverse);
            case IMPOSSIBLE_SPEED_JUMP -> List.of(EnumSet.of(Signal.ROAD_SPEED));
        };
    }
}
