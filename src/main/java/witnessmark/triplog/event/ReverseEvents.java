package witnessmark.triplog.event;

import java.util.Optional;
import witnessmark.triplog.gear.InHand;

/**
 * Reverse taken while the truck still rolls forward, or a forward gear while it rolls back. Road speed has no sign: the
 * direction is that of the gear that drove last since the truck stood.
 */
final class ReverseEvents implements Detector {
    private static final double ROLLING_KMH = 3;
    private static final double SERIOUS_KMH = 5;
    private static final double STOOD_SECONDS = 0.3;

    /** Which way the truck rolls. */
    private enum Way {
        FORWARD,
        BACK,
        UNKNOWN
    }

    private final Drive drive;
    private Way way = Way.UNKNOWN;
    private double standing;
    /** Sign of the last lever position out of neutral; 0 before the first. */
    private int side;

    private double before = Double.NaN;
    private long lineBefore;
    /** Last speed that was given, for a row without one. */
    private double kmh = Double.NaN;

    ReverseEvents(Drive drive) {
        this.drive = drive;
    }

    @Override
    public void row(Moment m) {
        double position = m.leverPosition();
        if (Double.isNaN(position)) {
            return;
        }
        kmh = Double.isNaN(m.kmh()) ? kmh : m.kmh();
        stand(m);
        int now = (int) Math.signum(position);
        if (now != 0 && now != side) {
            if (side != 0) {
                drive.chances().count(EventKind.Chance.DIRECTION);
                changed(m, now);
            }
            side = now;
        }
        if (m.isInGear()) {
            way = position < 0 ? Way.BACK : drive.table().gear(m.inHand()).isReverse() ? way : Way.FORWARD;
        }
        before = position;
        lineBefore = m.line();
    }

    private void stand(Moment m) {
        standing = m.inHand() == InHand.STANDING ? standing + m.seconds() : 0;
        if (standing >= STOOD_SECONDS) {
            way = Way.UNKNOWN;
        }
    }

    private void changed(Moment m, int now) {
        boolean against = now < 0 && way == Way.FORWARD || now > 0 && way == Way.BACK;
        if (!against || !(kmh > ROLLING_KMH) || Double.isNaN(before)) {
            return;
        }
        drive.found()
                .accept(new HabitEvent(
                        EventKind.GEAR_AGAINST_ROLL,
                        m.micros(),
                        0,
                        lineBefore,
                        m.line(),
                        kmh,
                        m.rpm(),
                        Optional.empty(),
                        Optional.empty(),
                        kmh / SERIOUS_KMH,
                        0.9,
                        Drive.figures("into-reverse", now < 0 ? 1 : 0),
                        Drive.words(
                                "%s taken at %.0f km/h while the truck still rolled %s.",
                                now < 0 ? "Reverse" : "A forward gear", kmh, now < 0 ? "forward" : "back")));
    }

    @Override
    public void interrupted() {
        way = Way.UNKNOWN;
        side = 0;
        standing = 0;
        before = Double.NaN;
        kmh = Double.NaN;
    }
}
