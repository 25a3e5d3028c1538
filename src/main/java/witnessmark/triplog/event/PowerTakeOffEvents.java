package witnessmark.triplog.event;

import witnessmark.triplog.signal.Signal;

/** The power take-off engaged while the truck runs at road speed; slow work with it, as in spreading, is none. */
final class PowerTakeOffEvents implements Detector {
    /** Common practice: work with a driven power take-off is done slower than this. */
    private static final double ROAD_KMH = 25;

    private static final double LEAST_SECONDS = 10;
    private static final double PATIENCE_SECONDS = 3;
    private static final double SERIOUS_KM = 1;

    private final Drive drive;
    private final LastingCondition engaged;

    PowerTakeOffEvents(Drive drive) {
        this.drive = drive;
        this.engaged = new LastingCondition(LEAST_SECONDS, PATIENCE_SECONDS, this::wasEngaged);
    }

    @Override
    public void row(Moment m) {
        boolean on = m.get(Signal.POWER_TAKE_OFF) > 0.5 && m.kmh() > ROAD_KMH;
        if (on || engaged.isOpen()) {
            engaged.look(m, on, 0);
        }
    }

    @Override
    public boolean isOpen() {
        return engaged.isOpen();
    }

    @Override
    public void interrupted() {
        engaged.end();
    }

    private void wasEngaged(LastingCondition spell) {
        drive.found(
                EventKind.POWER_TAKE_OFF_ON_ROAD,
                spell,
                HabitEvent.Gears.NONE,
                spell.km / SERIOUS_KM,
                0.9,
                EventFigures.of(EventFigure.DISTANCE_KM, spell.km),
                Drive.words(
                        "Power take-off on for %.2f km in %.0f s at up to %.0f km/h: left in, or its switch set wrong.",
                        spell.km, spell.seconds(), spell.highestKmh));
    }
}
