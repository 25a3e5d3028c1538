package witnessmark.triplog.event;

import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.Signal;

/**
 * The range knob moved while the lever stands in neutral, or in reverse, and the truck rolls. It needs the knob itself:
 * a switch on the range cylinder always moves in neutral, after a proper preselection too.
 */
final class KnobEvents implements Detector {
    private static final double ROLLING_KMH = 3;
    private static final double ROLLING_BACK_KMH = 0.8;
    private static final double HARD_KMH = 25;
    private static final double HARD_BACK_KMH = 3;
    private static final long LONGEST_WAIT_MICROS = 20_000_000;

    private final Drive drive;
    private double knobBefore = Double.NaN;
    private double leverBefore = Double.NaN;
    private long lineBefore;
    private @Nullable HabitEvent waiting;
    /** Whether the truck has rolled since reverse drove it, and no forward gear was taken. */
    private boolean rollsBack;

    private final LastSpeed speed = new LastSpeed();
    private double kmh = Double.NaN;

    KnobEvents(Drive drive) {
        this.drive = drive;
    }

    @Override
    public void row(Moment m) {
        double knob = m.get(Signal.RANGE_KNOB);
        kmh = speed.at(m);
        double position = m.leverPosition();
        followRoll(m, m.direction());
        if (Double.isNaN(knob)) {
            return;
        }
        decide(m, position);
        if (!Double.isNaN(knobBefore) && knob != knobBefore) {
            moved(m, knob, position);
        }
        knobBefore = knob;
        leverBefore = position;
        lineBefore = m.line();
    }

    private void followRoll(Moment m, double direction) {
        if (m.inHand() == InHand.STANDING || direction > 0) {
            rollsBack = false;
        } else if (direction < 0 && kmh > ROLLING_BACK_KMH) {
            rollsBack = true;
        }
    }

    /**
     * In reverse the knob only asks: the range follows when the lever comes out, and does harm only if the truck still
     * rolls then.
     */
    private void decide(Moment m, double position) {
        HabitEvent event = waiting;
        if (event == null) {
            return;
        }
        boolean out = position == 0;
        boolean stands = m.inHand() == InHand.STANDING;
        if (out || stands || position > 0 || m.micros() - event.startMicros() > LONGEST_WAIT_MICROS) {
            boolean rolling = out && !stands && kmh > ROLLING_KMH;
            drive.found().accept(event.with(event.figures().and(EventFigure.LEVER_OUT, rolling ? 1 : 0)));
            waiting = null;
        }
    }

    /** Knob and lever in one row say nothing of which moved first: neither an event nor a chance that went well. */
    private void moved(Moment m, double knob, double position) {
        if (!(Math.signum(position) == Math.signum(leverBefore))) {
            return;
        }
        drive.chances().count(EventKind.Chance.KNOB);
        if (position == 0 && kmh > ROLLING_KMH) {
            HabitEvent event = rollsBack
                    ? event(
                            EventKind.RANGE_MOVED_IN_REVERSE,
                            m,
                            knob,
                            kmh / HARD_BACK_KMH,
                            "neutral after reverse, rolling back,")
                    : event(EventKind.RANGE_MOVED_IN_NEUTRAL, m, knob, Math.pow(kmh / HARD_KMH, 2), "neutral");
            drive.found().accept(event.with(toward(knob).and(EventFigure.LEVER_OUT, 1)));
        } else if (position < 0 && kmh > ROLLING_BACK_KMH) {
            end();
            waiting = event(EventKind.RANGE_MOVED_IN_REVERSE, m, knob, kmh / HARD_BACK_KMH, "reverse");
        }
    }

    private void end() {
        if (waiting != null) {
            drive.found().accept(waiting);
            waiting = null;
        }
    }

    @Override
    public boolean isOpen() {
        return waiting != null;
    }

    @Override
    public void interrupted() {
        end();
        knobBefore = Double.NaN;
        leverBefore = Double.NaN;
        rollsBack = false;
        speed.forget();
        kmh = Double.NaN;
    }

    private static EventFigures toward(double knob) {
        return EventFigures.of(EventFigure.KNOB_TO_HIGH, knob > 0.5 ? 1 : 0);
    }

    private HabitEvent event(EventKind kind, Moment m, double knob, double severity, String where) {
        return HabitEvent.of(
                kind,
                new HabitEvent.Stretch(m.micros(), 0, lineBefore, m.line(), kmh, m.rpm()),
                HabitEvent.Gears.NONE,
                severity,
                0.9,
                toward(knob),
                Drive.words(
                        "Range knob moved to %s with the lever in %s at %.0f km/h.",
                        knob > 0.5 ? "high" : "low", where, kmh));
    }
}
