package witnessmark.triplog.event;

import java.util.Comparator;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.Gear;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.Signal;

/** Long rolls out of gear at idle, and wheels turning with the engine stopped. */
final class RollingEvents implements Detector {
    private static final double STOPPED_SECONDS = 5;
    private static final double STOPPED_KM = 0.02;
    private static final double COAST_KM = 0.04;
    private static final double PATIENCE_SECONDS = 1.2;
    /** Declared assumption for the sliding distance where the drawing is not at hand: radius of a gear's hub bore. */
    private static final double HUB_RADIUS_M = 0.04;

    private final Drive drive;
    private final LastGears gears;
    private final Spell coast;
    private final Spell stopped;
    private boolean pedalKnown;
    private boolean parked;

    RollingEvents(Drive drive, LastGears gears) {
        this.drive = drive;
        this.gears = gears;
        this.coast = new Spell(drive.limits().coastSeconds(), PATIENCE_SECONDS, this::coasted);
        this.stopped = new Spell(STOPPED_SECONDS, 3, this::rolledStopped);
    }

    @Override
    public void row(Moment m) {
        boolean neutral =
                m.inHand() == InHand.NEUTRAL && m.kmh() >= drive.limits().coastKmh();
        if (neutral || coast.isOpen()) {
            pedalKnown = m.isPedalKnown();
            coast.look(m, neutral, neutral ? slidingRpm(m) : 0);
        }
        boolean off = m.inHand() == InHand.ENGINE_OFF;
        if (off || stopped.isOpen()) {
            parked = m.get(Signal.PARKING_BRAKE) > 0.5;
            stopped.look(m, off, off ? m.outputRpm(drive.perKmh()) * rangeRatio() : 0);
        }
    }

    @Override
    public boolean isOpen() {
        return coast.isOpen() || stopped.isOpen();
    }

    @Override
    public void interrupted() {
        coast.end();
        stopped.end();
    }

    /** How many times faster than the output the mainshaft turns in the range last seen. */
    private double rangeRatio() {
        GearRun last = gears.current;
        return last != null && drive.table().gear(last.gear).range() == Gear.Range.LOW
                ? drive.table().rangeStep()
                : 1;
    }

    /** Speed between mainshaft and the lowest forward gear of the front box, which idles along at engine / ratio. */
    private double slidingRpm(Moment m) {
        double mainshaft = m.outputRpm(drive.perKmh()) * rangeRatio();
        return Math.abs(mainshaft - m.rpm() / lowestMainRatio());
    }

    private double lowestMainRatio() {
        return drive.table().gears().stream()
                .filter(g -> !g.isReverse() && g.lever() != 0)
                .map(drive.table()::mainRatio)
                .max(Comparator.naturalOrder())
                .orElse(1.0);
    }

    private void coasted(Spell spell) {
        if (spell.km < COAST_KM) {
            return;
        }
        double metres = 2 * Math.PI * HUB_RADIUS_M * spell.integral / 60;
        @Nullable GearRun last = gears.current;
        Optional<String> gear = last == null
                ? Optional.empty()
                : Optional.of(drive.table().gear(last.gear).name());
        drive.found(
                EventKind.COAST_IN_NEUTRAL,
                spell,
                gear,
                spell.seconds() / 60,
                pedalKnown ? 0.95 : 0.75,
                Drive.figures(
                        "distance-km", spell.km, "sliding-turns", spell.integral / 60, "sliding-m-at-40-mm", metres),
                Drive.words(
                        "Rolled %.2f km in %.0f s at up to %.0f km/h, engine at idle, no gear fits%s. The lowest forward"
                                + " gear slid about %.0f m on its seat (radius 40 mm assumed).",
                        spell.km,
                        spell.seconds(),
                        spell.highestKmh,
                        pedalKnown
                                ? ", pedal up"
                                : " (out of gear, or pedal down: the log has no clutch to be believed)",
                        metres));
    }

    private void rolledStopped(Spell spell) {
        if (spell.km < STOPPED_KM) {
            return;
        }
        drive.found(
                EventKind.ROLLING_ENGINE_STOPPED,
                spell,
                Optional.empty(),
                spell.km,
                parked ? 0.5 : 0.9,
                Drive.figures("distance-km", spell.km, "mainshaft-turns", spell.integral / 60),
                Drive.words(
                        "Wheels turned for %.2f km in %.0f s at up to %.0f km/h with the engine stopped: towed or rolled,"
                                + " the front box without oil.",
                        spell.km, spell.seconds(), spell.highestKmh));
    }
}
