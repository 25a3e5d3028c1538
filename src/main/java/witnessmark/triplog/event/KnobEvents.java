package witnessmark.triplog.event;

import java.util.Optional;
import witnessmark.triplog.signal.Signal;

/**
 * The range knob moved while the lever stands in neutral, or in reverse, and the truck rolls. It needs the knob itself:
 * a switch on the range cylinder always moves in neutral, after a proper preselection too.
 */
final class KnobEvents implements Detector {
    private static final double ROLLING_KMH = 3;
    private static final double ROLLING_BACK_KMH = 0.8;
    private static final double HARD_KMH = 25;

    private final Drive drive;
    private double knobBefore = Double.NaN;
    private double leverBefore = Double.NaN;
    private long lineBefore;
    /** Last speed that was given, for a row without one. */
    private double kmh = Double.NaN;

    KnobEvents(Drive drive) {
        this.drive = drive;
    }

    @Override
    public void row(Moment m) {
        double knob = m.get(Signal.RANGE_KNOB);
        kmh = Double.isNaN(m.kmh()) ? kmh : m.kmh();
        if (Double.isNaN(knob)) {
            return;
        }
        double position = m.leverPosition();
        if (!Double.isNaN(knobBefore) && knob != knobBefore) {
            drive.chances().count(EventKind.Chance.KNOB);
            moved(m, knob, position);
        }
        knobBefore = knob;
        leverBefore = position;
        lineBefore = m.line();
    }

    private void moved(Moment m, double knob, double position) {
        if (position == 0 && leverBefore == 0 && kmh > ROLLING_KMH) {
            found(EventKind.RANGE_MOVED_IN_NEUTRAL, m, knob, Math.pow(kmh / HARD_KMH, 2), "neutral");
        } else if (position < 0 && leverBefore < 0 && kmh > ROLLING_BACK_KMH) {
            found(EventKind.RANGE_MOVED_IN_REVERSE, m, knob, kmh / 3, "reverse");
        }
    }

    @Override
    public void interrupted() {
        knobBefore = Double.NaN;
        leverBefore = Double.NaN;
        kmh = Double.NaN;
    }

    private void found(EventKind kind, Moment m, double knob, double severity, String where) {
        drive.found()
                .accept(new HabitEvent(
                        kind,
                        m.micros(),
                        0,
                        lineBefore,
                        m.line(),
                        kmh,
                        m.rpm(),
                        Optional.empty(),
                        Optional.empty(),
                        severity,
                        0.9,
                        Drive.figures("knob-to-high", knob),
                        Drive.words(
                                "Range knob moved to %s with the lever in %s at %.0f km/h.",
                                knob > 0.5 ? "high" : "low", where, kmh)));
    }
}
