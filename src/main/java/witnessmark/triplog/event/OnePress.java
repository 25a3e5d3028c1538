package witnessmark.triplog.event;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.KnobGear;

/**
 * The press of the clutch under way, and what it would mean. A press that goes on for minutes, or through a change of
 * gear, is the switch and not a foot, so what it would mean is told only once the pedal is up again.
 */
final class OnePress {
    /** So far ahead of the wheels an engine may run in a clutch that slips under the foot. */
    private static final double MOST_AHEAD = 0.4;

    private static final double LEAST_AHEAD = -0.03;
    private static final double PULLING_PERCENT = 10;
    private static final long IN_HAND_MICROS = 1_500_000;
    private static final long LONGEST_MICROS = 120_000_000;
    private static final double STEP = 0.97;

    private final Drive drive;
    private final LastGears gears;
    private boolean on;
    private long since;
    private @Nullable GearRun in;
    private @Nullable HabitEvent meaning;

    OnePress(Drive drive, LastGears gears) {
        this.drive = drive;
        this.gears = gears;
    }

    boolean isOn() {
        return on;
    }

    /** A row without a clutch value ends no press. */
    boolean isEndedBy(Moment m) {
        return on && m.isPedalKnown() && !m.isPedalPressed();
    }

    void row(Moment m) {
        if (isEndedBy(m)) {
            end(m.micros());
        }
        if (m.isPedalPressed() && !on) {
            GearRun run = gears.current;
            on = true;
            since = m.micros();
            in = run != null && since - run.endMicros < IN_HAND_MICROS ? run : null;
        }
    }

    private void end(long micros) {
        boolean foot = micros - since < LONGEST_MICROS && !isThroughShift();
        if (meaning != null && foot) {
            drive.found().accept(meaning);
        }
        meaning = null;
        on = false;
    }

    /** Whether a taller gear has come since; a shorter one may be the clutch that slips. */
    private boolean isThroughShift() {
        GearRun now = gears.current;
        if (in == null || now == null) {
            return false;
        }
        return drive.table().gear(now.gear).ratio()
                < STEP * drive.table().gear(in.gear).ratio();
    }

    /** Whether the engine pulls as fast as, or ahead of, the gear in hand before the press. */
    boolean isAhead(Moment m) {
        if (in == null || !(m.load() >= PULLING_PERCENT)) {
            return false;
        }
        KnobGear gear = drive.table().gear(in.gear);
        double ahead = 1 - gear.ratio() * m.outputRpm(drive.perKmh()) / m.rpm();
        return ahead > LEAST_AHEAD && ahead < MOST_AHEAD;
    }

    /** Name of the gear in hand before the press. */
    Optional<String> gear() {
        return in == null
                ? Optional.empty()
                : Optional.of(drive.table().gear(in.gear).name());
    }

    /** Keeps the longest of what the press would mean. */
    void keep(HabitEvent event) {
        if (meaning == null || event.seconds() > meaning.seconds()) {
            meaning = event;
        }
    }

    void interrupted() {
        if (meaning != null) {
            drive.found().accept(meaning);
        }
        meaning = null;
        on = false;
        in = null;
    }
}
