package witnessmark.triplog.event;

import witnessmark.triplog.signal.Signal;

/** Gearbox oil above its limit for a while. */
final class OilEvents implements Detector {
    private final Drive drive;
    private final LastingCondition hot;

    OilEvents(Drive drive) {
        this.drive = drive;
        this.hot = new LastingCondition(drive.limits().hotOilSeconds(), 30, this::wasHot);
    }

    @Override
    public void row(Moment m) {
        double celsius = m.get(Signal.GEARBOX_OIL);
        boolean above = celsius > drive.limits().hotOilCelsius();
        if (above || hot.isOpen() && !Double.isNaN(celsius)) {
            hot.look(m, above, celsius);
        }
    }

    @Override
    public boolean isOpen() {
        return hot.isOpen();
    }

    @Override
    public void interrupted() {
        hot.end();
    }

    private void wasHot(LastingCondition spell) {
        drive.found(
                EventKind.HOT_OIL,
                spell,
                HabitEvent.Gears.NONE,
                (spell.peak - drive.limits().hotOilCelsius()) / 10,
                0.95,
                EventFigures.of(EventFigure.HIGHEST_CELSIUS, spell.peak),
                Drive.words(
                        "Gearbox oil above %.0f C (%.0f F) for %.0f s, up to %.0f C (%.0f F).",
                        drive.limits().hotOilCelsius(),
                        drive.limits().hotOilCelsius() * 1.8 + 32,
                        spell.seconds(),
                        spell.peak,
                        spell.peak * 1.8 + 32));
    }
}
