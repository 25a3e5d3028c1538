package witnessmark.triplog.event;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.Gear;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.Signal;

/** Slip under load, foot on the pedal, and the pedal at the floor while rolling. */
final class ClutchEvents implements Detector {
    private static final double LOAD_PERCENT = 30;
    static final double MOST_SLIP = 0.35;
    private static final double SLIP_KMH = 5;
    private static final long LONGEST_MICROS = 20_000_000;
    /** At idle a gear that fits does so by chance, while road speed falls past it. */
    private static final double IDLING = 1.15;

    private static final double FLOOR_PERCENT = 95;
    private static final double FLOOR_KMH = 3;
    private static final double FLOOR_SECONDS = 0.15;

    private final Drive drive;
    private final LastGears gears;
    private final StartEvents starts;
    private final Pull pull;
    private final Spell slip;
    private final Spell riding;
    private final Spell floored;
    private boolean loadKnown;
    /** Whether the row, or the slip so far, may also be a shift at full throttle; it is slip if the gear comes back. */
    private boolean rowDoubtful;

    private boolean slipDoubtful;
    private int slipGear;
    private long slipFrom;
    private int inHand;

    ClutchEvents(Drive drive, LastGears gears, StartEvents starts, Pull pull) {
        this.drive = drive;
        this.pull = pull;
        this.gears = gears;
        this.starts = starts;
        this.slip = new Spell(drive.limits().slipSeconds(), 0.4, this::slipped);
        this.riding = new Spell(drive.limits().ridingSeconds(), 0.5, this::rode);
        this.floored = new Spell(FLOOR_SECONDS, 0.15, this::floored);
    }

    @Override
    public void row(Moment m) {
        double share = slipShare(m);
        loadKnown = !Double.isNaN(m.load()) && m.isPedalKnown();
        boolean slips = share >= drive.limits().slipShare()
                && share < MOST_SLIP
                && m.load() >= LOAD_PERCENT
                && m.kmh() > SLIP_KMH
                && m.isPedalKnown()
                && !m.isPedalPressed()
                && !starts.isStarting();
        GearRun run = gears.current;
        if (slips && !slip.isOpen()) {
            slipDoubtful = false;
            slipGear = run == null ? InHand.CANNOT_TELL : run.gear;
            slipFrom = run == null ? 0 : run.endMicros;
        }
        if (slips) {
            slipDoubtful |= rowDoubtful;
        }
        inHand = m.inHand();
        if (slips || slip.isOpen()) {
            slip.look(m, slips, share);
        }
        boolean follows = m.isInGear() && m.rpm() > IDLING * drive.table().idleRpm();
        boolean rides = follows && m.kmh() > SLIP_KMH && m.isPedalPressed() && !starts.isStarting();
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

    /**
     * Share of engine speed lost in the clutch: from the input shaft where the log has it, else from the gear that was in
     * hand a moment ago. Without the shaft, slip of more than half a step looks like the next lower gear; it is slip only
     * where the engine pulled on without a break, for then no lever was moved.
     */
    private double slipShare(Moment m) {
        rowDoubtful = false;
        double input = m.get(Signal.INPUT_SHAFT_SPEED);
        if (input > 0) {
            return 1 - input / m.rpm();
        }
        GearRun run = gears.current;
        if (run == null || (m.micros() - run.endMicros) > LONGEST_MICROS) {
            return Double.NaN;
        }
        boolean unbroken = pull.isUnbrokenAfter(slip.isOpen() ? slipFrom : run.endMicros);
        if (m.isInGear() && m.inHand() != run.gear && !unbroken) {
            return Double.NaN;
        }
        double locked = drive.table().gear(run.gear).ratio() * m.outputRpm(drive.perKmh());
        double share = 1 - locked / m.rpm();
        double noise = 3 * (Double.isNaN(m.scatter()) ? 0.05 : m.scatter());
        boolean small = 1 / (1 - share) < Math.sqrt(stepBelow(run)) * 1.04;
        rowDoubtful = !small && !pull.isUnbrokenSince(slip.isOpen() ? slipFrom : run.endMicros)
                || m.isInGear() && m.inHand() != run.gear && isSplit(run.gear, m.inHand());
        return share > noise && (unbroken || small) ? share : Double.NaN;
    }

    private boolean isSplit(int one, int other) {
        Gear a = drive.table().gear(one);
        Gear b = drive.table().gear(other);
        return a.lever() == b.lever() && a.range() == b.range();
    }

    private double stepBelow(GearRun run) {
        int shorter = drive.table().shorter(run.gear);
        return shorter < 0
                ? 1.3
                : drive.table().gear(shorter).ratio()
                        / drive.table().gear(run.gear).ratio();
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

    /**
     * A slip as large as a split looks like one; what tells is that the gear came back with the engine pulling on and the
     * pedal up, as two splits hardly can. To be called after the run has become the current one.
     */
    void settled(GearRun after) {
        GearRun middle = gears.between(drive.table());
        boolean pulled = middle != null
                && loadKnown
                && middle.seconds() >= drive.limits().slipSeconds()
                && (after.startMicros - middle.startMicros) < LONGEST_MICROS
                && pull.isUnbrokenFrom(middle.startMicros);
        if (middle == null || !pulled) {
            return;
        }
        double seconds = (after.startMicros - middle.startMicros) / 1e6;
        Gear gear = drive.table().gear(after.gear);
        double share = 1 - gear.ratio() / drive.table().gear(middle.gear).ratio();
        drive.found()
                .accept(new HabitEvent(
                        EventKind.CLUTCH_SLIP,
                        middle.startMicros,
                        seconds,
                        middle.firstLine,
                        after.firstLine,
                        Math.max(middle.startKmh, middle.endKmh),
                        middle.highestRpm,
                        Optional.of(gear.name()),
                        Optional.of(gear.name()),
                        share * seconds / 0.5,
                        0.7,
                        Drive.figures("highest-slip-percent", 100 * share),
                        Drive.words(
                                "Clutch slipped under load for %.1f s by about %.0f %%, pedal not pressed: as much as a"
                                        + " split, but %s came back with the engine pulling on.",
                                seconds, 100 * share, gear.name())));
    }

    private void slipped(Spell spell) {
        if (slipDoubtful && !(inHand == slipGear && pull.isUnbrokenAfter(slipFrom))) {
            return;
        }
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
