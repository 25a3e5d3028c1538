package witnessmark.triplog.event;

import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.Signal;

/** The engine idling below its specified speed at rest: a matter of its settings or its state, not of the driver. */
final class IdleEvents implements Detector {
    private static final double RUNNING_RPM = 300;
    private static final double LEAST_SECONDS = 20;
    private static final double PATIENCE_SECONDS = 0.5;
    private static final double FREE_PEDAL_PERCENT = 2;
    private static final double LOW_SHARE = 0.94;
    private static final double SERIOUS_SHARE = 0.1;

    private final Drive drive;
    private final LastingCondition idling;
    private final LastingCondition low;

    IdleEvents(Drive drive) {
        this.drive = drive;
        this.idling = new LastingCondition(
                LEAST_SECONDS, PATIENCE_SECONDS, spell -> drive.chances().count(EventKind.Chance.IDLING));
        this.low = new LastingCondition(LEAST_SECONDS, PATIENCE_SECONDS, this::idledLow);
    }

    @Override
    public void row(Moment m) {
        boolean idles = m.inHand() == InHand.STANDING
                && m.rpm() > RUNNING_RPM
                && !m.isPedalPressed()
                && !(m.get(Signal.ACCELERATOR) > FREE_PEDAL_PERCENT)
                && !(m.get(Signal.POWER_TAKE_OFF) > 0.5);
        if (idles || idling.isOpen()) {
            idling.look(m, idles, m.rpm());
        }
        boolean isLow = idles && m.rpm() < lowestRpm(drive.table().idleRpm());
        if (isLow || low.isOpen()) {
            low.look(m, isLow, m.rpm());
        }
    }

    /** Whether the engine idles too low at the moment. */
    boolean isLow() {
        return low.isOpen();
    }

    /** Idling goes on until this row, at a proper speed. */
    void goesOn(Moment m) {
        if (idling.isOpen()) {
            idling.look(m, true, m.rpm());
        }
    }

    /** Engine speed below which an idle is too low. */
    static double lowestRpm(double specifiedRpm) {
        return LOW_SHARE * specifiedRpm;
    }

    @Override
    public void interrupted() {
        idling.end();
        low.end();
    }

    private void idledLow(LastingCondition spell) {
        double mean = spell.integral / spell.seconds();
        double specified = drive.table().idleRpm();
        drive.found(
                EventKind.IDLE_TOO_LOW,
                spell,
                HabitEvent.Gears.NONE,
                (1 - mean / specified) / SERIOUS_SHARE,
                0.9,
                EventFigures.of(EventFigure.MEAN_RPM, mean),
                Drive.words(
                        "Engine idled at %.0f rpm on average for %.0f s at rest; the truck's profile says %.0f rpm. A matter"
                                + " of the engine, not of the driver.",
                        mean, spell.seconds(), specified));
    }
}
