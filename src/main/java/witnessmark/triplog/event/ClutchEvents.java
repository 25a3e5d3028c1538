package witnessmark.triplog.event;

import java.util.Optional;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.Signal;

/** Foot on the pedal, and the pedal at the floor, while rolling. */
final class ClutchEvents implements Detector {
    private static final double RIDING_KMH = 5;
    /** At idle a gear that fits does so by chance, while road speed falls past it. */
    private static final double IDLING = 1.15;

    private static final double FLOOR_PERCENT = 95;
    private static final double FLOOR_KMH = 3;
    private static final double FLOOR_SECONDS = 0.15;

    private final Drive drive;
    private final StartEvents starts;
    private final Spell riding;
    private final Spell floored;

    ClutchEvents(Drive drive, StartEvents starts) {
        this.drive = drive;
        this.starts = starts;
        this.riding = new Spell(drive.limits().ridingSeconds(), 0.5, this::rode);
        this.floored = new Spell(FLOOR_SECONDS, 0.15, this::floored);
    }

    @Override
    public void row(Moment m) {
        boolean follows = m.isInGear() && m.rpm() > IDLING * drive.table().idleRpm();
        boolean rides = follows && m.kmh() > RIDING_KMH && m.isPedalPressed() && !starts.isStarting();
        if (rides && riding.isOpen() && riding.gear != m.inHand()) {
            // One gear drives on; another one means that the ratio only sweeps past.
            riding.end();
        }
        if (rides || riding.isOpen()) {
            riding.look(m, rides, 0);
        }
        boolean floor = m.kmh() > FLOOR_KMH
                && (m.get(Signal.CLUTCH_FLOOR) > 0.5 || m.get(Signal.CLUTCH_PEDAL) >= FLOOR_PERCENT);
        if (floor || floored.isOpen()) {
            floored.look(m, floor, 0);
        }
    }

    @Override
    public boolean isOpen() {
        return riding.isOpen() || floored.isOpen();
    }

    @Override
    public void interrupted() {
        riding.end();
        floored.end();
    }

    private void rode(Spell spell) {
        drive.found(
                EventKind.RIDING_CLUTCH,
                spell,
                Optional.of(InHand.word(drive.table(), spell.gear)),
                spell.seconds() / 20,
                0.9,
                Drive.figures(),
                Drive.words(
                        "Pedal pressed for %.1f s while the gear still drove: foot on the clutch, free travel gone, or the"
                                + " switch set wrong.",
                        spell.seconds()));
    }

    private void floored(Spell spell) {
        drive.found(
                EventKind.CLUTCH_FLOORED_ROLLING,
                spell,
                Optional.empty(),
                spell.highestKmh / 30,
                0.9,
                Drive.figures(),
                Drive.words(
                        "Pedal at the floor for %.1f s at up to %.0f km/h: the clutch brake bites there.",
                        spell.seconds(), spell.highestKmh));
    }
}
