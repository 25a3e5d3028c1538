package witnessmark.triplog.evidence;

import java.util.Optional;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.Figure;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.Gear;
import witnessmark.triplog.gear.GearTable;

/**
 * Which events speak for which finding, and how often they come on a truck that has the habit or fault and on one that
 * has not, per chance (100 km for distance). The rates are common practice, no source; they are means, and any true rate
 * is taken to scatter widely about them.
 */
enum LogFinding {
    LOW_RANGE("log-range-low-above-ceiling", EventKind.LOW_RANGE_ABOVE_CEILING, 0.10, 0.002),
    OVERDRIVE_TO_LOW("log-overdrive-to-low-pair", EventKind.OVERDRIVE_TO_LOW, 0.10, 0.002),
    START_HIGH_RANGE("log-standing-start-high-range", EventKind.START_IN_HIGH_RANGE, 0.08, 0.002),
    START_TOO_HIGH("log-start-gear-too-high", EventKind.START_GEAR_TOO_HIGH, 0.10, 0.01),
    ROLLING_AT_IDLE("log-rolling-at-idle", EventKind.COAST_IN_NEUTRAL, 1.0, 0.03),
    ROLLING_STOPPED("log-rolling-engine-stopped", EventKind.ROLLING_ENGINE_STOPPED, 0.3, 0.003),
    LUGGING("log-high-torque-low-rpm", EventKind.LUGGING, 3.0, 0.1),
    OVERSPEED_ONE_RATIO("log-overspeed-one-ratio", EventKind.ENGINE_OVERSPEED, 0.5, 0.01),
    OVERSPEED_DOWNSHIFT("log-overspeed-after-downshift", EventKind.ENGINE_OVERSPEED, 0.5, 0.01),
    OVERSPEED_LEVER("log-overspeed-after-lever-downshift", EventKind.ENGINE_OVERSPEED, 0.5, 0.01),
    SPEED_JUMPS("log-speed-jumps", EventKind.IMPOSSIBLE_SPEED_JUMP, 1.0, 0.02),
    CLUTCH_RIDING("log-clutch-riding", EventKind.RIDING_CLUTCH, 2.0, 0.05),
    FLOORED("log-clutch-full-pedal-on-move", EventKind.CLUTCH_FLOORED_ROLLING, 5.0, 0.2),
    HOT_OIL("log-oil-temperature-high", EventKind.HOT_OIL, 0.3, 0.005),
    POWER_TAKE_OFF("log-pto-engaged-on-road", EventKind.POWER_TAKE_OFF_ON_ROAD, 0.3, 0.003),
    RANGE_NEUTRAL("log-range-moved-in-neutral", EventKind.RANGE_MOVED_IN_NEUTRAL, 0.10, 0.002),
    RANGE_REVERSE("log-range-moved-rolling-back", EventKind.RANGE_MOVED_IN_REVERSE, 0.2, 0.004),
    FAST_ENGAGEMENT("log-fast-clutch-engagement", EventKind.CLUTCH_DROPPED, 0.10, 0.005),
    DISC_OVERSPEED("log-disc-overspeed", EventKind.DISC_OVERSPEED, 0.10, 0.001),
    REVERSE_ROLLING("log-reverse-while-rolling", EventKind.GEAR_AGAINST_ROLL, 0.15, 0.005),
    SPLIT_UNDER_TORQUE("log-splitter-moved-under-torque", EventKind.SPLIT_UNDER_TORQUE, 0.15, 0.01),
    IDLE_LOW("log-idle-below-specification", EventKind.IDLE_TOO_LOW, 0.5, 0.02),
    SHORT_GAPS("log-shift-gaps-very-short", EventKind.SHIFT_WITHOUT_CLUTCH, 0.10, 0.01);

    private static final double SHORT_GAP_SECONDS = 0.5;
    private static final double UNMATCHED_RPM = 200;
    /** A stalled truck that rolls out goes metres; one that is towed goes kilometres. */
    private static final double TOWED_KM = 1;

    private final String id;
    private final EventKind kind;
    private final double habitRate;
    private final double strayRate;

    LogFinding(String id, EventKind kind, double habitRate, double strayRate) {
        this.id = id;
        this.kind = kind;
        this.habitRate = habitRate;
        this.strayRate = strayRate;
    }

    String id() {
        return id;
    }

    EventKind kind() {
        return kind;
    }

    double habitRate() {
        return habitRate;
    }

    double strayRate() {
        return strayRate;
    }

    /** Whether only doing it again and again makes it what the finding says; a tow or a runaway happens once. */
    boolean isHabit() {
        return switch (this) {
            case ROLLING_STOPPED,
                    OVERSPEED_ONE_RATIO,
                    OVERSPEED_DOWNSHIFT,
                    OVERSPEED_LEVER,
                    DISC_OVERSPEED,
                    SPEED_JUMPS,
                    IDLE_LOW,
                    HOT_OIL -> false;
            default -> true;
        };
    }

    /** What an event of a finding's kind says of the finding. */
    enum Fit {
        SPEAKS_FOR,
        /** It says something else. */
        NOT_MEANT,
        /** It may be one, but something else explains it, or another finding has it already. */
        OPEN
    }

    /** What the event, of this finding's kind, says of it. What follows from another act is that act's witness. */
    Fit fit(HabitEvent event, GearTable table) {
        if (event.isConsequence() && isMeant(event, table)) {
            return Fit.OPEN;
        }
        boolean open =
                switch (this) {
                    case OVERDRIVE_TO_LOW -> !(event.figures().is(Figure.SPLITTER_RETURNS)
                            && event.figures().get(Figure.CEILING_MULTIPLE) > 1);
                    case ROLLING_STOPPED -> !(event.figures().is(Figure.BY_OUTPUT_SHAFT)
                            && event.figures().get(Figure.DISTANCE_KM) >= TOWED_KM);
                    case RANGE_REVERSE -> !event.figures().is(Figure.LEVER_OUT);
                    default -> false;
                };
        return open ? Fit.OPEN : isMeant(event, table) ? Fit.SPEAKS_FOR : Fit.NOT_MEANT;
    }

    private boolean isMeant(HabitEvent event, GearTable table) {
        boolean oneGear = event.figures().is(Figure.IN_ONE_GEAR);
        return switch (this) {
            case OVERSPEED_ONE_RATIO -> oneGear;
            case OVERSPEED_DOWNSHIFT -> !oneGear && isDownshift(event, table);
            case OVERSPEED_LEVER -> !oneGear && isDownshift(event, table) && isSameRange(event, table);
            case SHORT_GAPS -> event.seconds() < SHORT_GAP_SECONDS
                    && event.figures().get(Figure.MISMATCH_RPM) > UNMATCHED_RPM;
            default -> true;
        };
    }

    private static boolean isDownshift(HabitEvent event, GearTable table) {
        Optional<Gear> before = gear(event.gearBefore(), table);
        Optional<Gear> after = gear(event.gearAfter(), table);
        return before.isPresent()
                && after.isPresent()
                && after.get().ratio() > before.get().ratio() * 1.01;
    }

    private static boolean isSameRange(HabitEvent event, GearTable table) {
        return gear(event.gearBefore(), table)
                .map(Gear::range)
                .equals(gear(event.gearAfter(), table).map(Gear::range));
    }

    private static Optional<Gear> gear(Optional<String> name, GearTable table) {
        return name.flatMap(
                n -> table.gears().stream().filter(g -> g.name().equals(n)).findFirst());
    }
}
