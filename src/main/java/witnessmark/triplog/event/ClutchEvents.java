package witnessmark.triplog.event;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.Signal;

/** Slip under load, foot on the pedal, and the pedal at the floor while rolling. */
final class ClutchEvents implements Detector {
    private static final double LOAD_PERCENT = 30;
    private static final double MOST_SLIP = 0.35;
    private static final double SLIP_KMH = 5;
    private static final double FLOOR_PERCENT = 95;
    private static final double FLOOR_KMH = 3;
    private static final double FLOOR_SECONDS = 0.15;

    private final Drive drive;
    private final LastGears gears;
    private final StartEvents starts;
    private final Spell slip;
    private final Spell riding;
    private final Spell floored;

    ClutchEvents(Drive drive, LastGears gears, StartEvents starts) {
        this.drive = drive;
        this.gears = gears;
        this.starts = starts;
        this.slip = new Spell(drive.limits().slipSeconds(), 0.4, this::slipped);
        this.riding = new Spell(drive.limits().ridingSeconds(), 0.5, this::rode);
        this.floored = new Spell(FLOOR_SECONDS, 0.15, this::floored);
    }

    @Override
    public void row(Moment m) {
        double share = slipShare(m);
        boolean slips = share >= drive.limits().slipShare()
                && share < MOST_SLIP
                && m.load() >= LOAD_PERCENT
                && m.kmh() > SLIP_KMH
                && !m.isPedalPressed()
                && !starts.isStarting();
        if (slips || slip.isOpen()) {
            slip.look(m, slips, share);
        }
        boolean rides = m.isInGear() && m.kmh() > SLIP_KMH && m.isPedalPressed();
        if (rides || riding.isOpen()) {
            riding.look(m, rides, 0);
        }
        boolean floor = m.kmh() > FLOOR_KMH
                && (m.get(Signal.CLUTCH_FLOOR) > 0.5 || m.get(Signal.CLUTCH_PEDAL) >= FLOOR_PERCENT);
        if (floor || floored.isOpen()) {
            floored.look(m, floor, 0);
        }
    }

    /**
     * Share of engine speed lost in the clutch: from the input shaft where the log has it, else from the gear that was in
     * hand a moment ago. Without the shaft, slip of more than half a step would look like the next lower gear and is
     * left aside.
     */
    private double slipShare(Moment m) {
        double input = m.get(Signal.INPUT_SHAFT_SPEED);
        if (input > 0) {
            return 1 - input / m.rpm();
        }
        GearRun run = gears.current;
        if (run == null || m.isInGear() && m.inHand() != run.gear || (m.micros() - run.endMicros) > 20_000_000) {
            return Double.NaN;
        }
        double locked = drive.table().gear(run.gear).ratio() * m.outputRpm(drive.perKmh());
        double share = 1 - locked / m.rpm();
        int shorter = drive.table().shorter(run.gear);
        double step = shorter < 0
                ? 1.3
                : drive.table().gear(shorter).ratio()
                        / drive.table().gear(run.gear).ratio();
        double noise = 3 * (Double.isNaN(m.scatter()) ? 0.05 : m.scatter());
        return share > noise && 1 / (1 - share) < Math.sqrt(step) * 1.04 ? share : Double.NaN;
    }

    @Override
    public boolean isOpen() {
        return slip.isOpen() || riding.isOpen() || floored.isOpen();
    }

    @Override
    public void interrupted() {
        slip.end();
        riding.end();
        floored.end();
    }

    private void slipped(Spell spell) {
        @Nullable GearRun run = gears.current;
        Optional<String> gear = run == null
                ? Optional.empty()
                : Optional.of(drive.table().gear(run.gear).name());
        drive.found(
                EventKind.CLUTCH_SLIP,
                spell,
                gear,
                spell.integral / 0.5,
                0.85,
                Drive.figures("highest-slip-percent", 100 * spell.peak),
                Drive.words(
                        "Clutch slipped under load for %.1f s, up to %.0f %%, pedal not pressed.",
                        spell.seconds(), 100 * spell.peak));
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
