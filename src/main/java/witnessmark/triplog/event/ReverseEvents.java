package witnessmark.triplog.event;

import witnessmark.triplog.gear.InHand;

/**
 * Reverse taken while the truck still rolls forward, or a forward gear while it rolls back. Road speed has no sign: the
 * direction is that of the gear that drove last since the truck stood.
 */
final class ReverseEvents implements Detector {
    private static final double ROLLING_KMH = 3;
    private static final double SERIOUS_KMH = 5;
    private static final double ROLLING_BACK_KMH = 0.8;
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
    private boolean rolledBack;
    /** Sign of the last lever position out of neutral; 0 before the first. */
    private int side;

    private double before = Double.NaN;
    private long lineBefore;
    private final LastSpeed speed = new LastSpeed();
    private double kmh = Double.NaN;

    ReverseEvents(Drive drive) {
        this.drive = drive;
    }

    @Override
    public void row(Moment m) {
        double position = m.direction();
        if (Double.isNaN(position)) {
            return;
        }
        kmh = speed.at(m);
        stand(m);
        reverse(m, position);
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

    /** A roll in reverse is a chance for the range to be moved on it. */
    private void reverse(Moment m, double position) {
        if (position >= 0) {
            rolledBack = false;
        } else if (!rolledBack && kmh > ROLLING_BACK_KMH) {
            rolledBack = true;
            drive.chances().count(EventKind.Chance.REVERSING);
        }
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
                .accept(HabitEvent.of(
                        EventKind.GEAR_AGAINST_ROLL,
                        new HabitEvent.Stretch(m.micros(), 0, lineBefore, m.line(), kmh, m.rpm()),
                        HabitEvent.Gears.NONE,
                        kmh / SERIOUS_KMH,
                        0.9,
                        EventFigures.of(EventFigure.INTO_REVERSE, now < 0 ? 1 : 0),
                        Drive.words(
                                "%s taken at %.0f km/h while the truck still rolled %s.",
                                now < 0 ? "Reverse" : "A forward gear", kmh, now < 0 ? "forward" : "back")));
    }

    @Override
    public void interrupted() {
        way = Way.UNKNOWN;
        side = 0;
        rolledBack = false;
        standing = 0;
        before = Double.NaN;
        speed.forget();
        kmh = Double.NaN;
    }
}
