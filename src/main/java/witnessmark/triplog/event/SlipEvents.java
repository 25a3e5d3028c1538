package witnessmark.triplog.event;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.signal.Signal;

/**
 * A clutch that lets the engine run ahead under load, pedal up. Without an input shaft speed, slip as large as a step
 * looks like a shift down; it is slip where the engine pulled on without a break, for then no lever was moved, or where
 * the gear came back so.
 */
final class SlipEvents implements Detector {
    static final double MOST_SLIP = 0.35;

    private static final double LOAD_PERCENT = 30;
    private static final double SLIP_KMH = 5;
    private static final double PATIENCE_SECONDS = 0.4;
    private static final long LONGEST_MICROS = 20_000_000;
    private static final long BACK_MICROS = 2_500_000;

    private final Drive drive;
    private final LastGears gears;
    private final StartEvents starts;
    private final TorqueAndLever pull;
    private final LastingCondition slip;
    private boolean loadKnown;
    /** Whether the row, or the slip so far, may also be a shift at full throttle; it is slip if the gear comes back. */
    private boolean rowDoubtful;

    private boolean doubtful;
    private int slipGear = InHand.CANNOT_TELL;
    private long slipFrom;
    private long slipTo;
    /** Slip that is told only if the gear comes back. */
    private @Nullable HabitEvent waiting;

    SlipEvents(Drive drive, LastGears gears, StartEvents starts, TorqueAndLever pull) {
        this.drive = drive;
        this.gears = gears;
        this.starts = starts;
        this.pull = pull;
        this.slip = new LastingCondition(drive.limits().slipSeconds(), PATIENCE_SECONDS, this::slipped);
    }

    @Override
    public void row(Moment m) {
        loadKnown = !Double.isNaN(m.load()) && m.isPedalKnown();
        double share = maySlip(m) ? slipShare(m) : Double.NaN;
        boolean slips = share >= drive.limits().slipShare() && share < MOST_SLIP;
        GearRun run = gears.current;
        if (slips && !slip.isOpen()) {
            doubtful = false;
            slipGear = run == null ? InHand.CANNOT_TELL : run.gear;
            slipFrom = run == null ? 0 : run.endMicros;
        }
        if (slips) {
            doubtful |= rowDoubtful;
        }
        if (slips || slip.isOpen()) {
            slip.look(m, slips, share);
        }
        decide(m);
    }

    private boolean maySlip(Moment m) {
        return m.load() >= LOAD_PERCENT
                && m.kmh() > SLIP_KMH
                && m.isPedalKnown()
                && !m.isPedalPressed()
                && m.leverPosition() != 0
                && !starts.isStarting();
    }

    /** Share of engine speed lost in the clutch: from the input shaft where the log has it, else from the last gear. */
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
        long since = slip.isOpen() ? slipFrom : run.endMicros;
        boolean unbroken = pull.isUnbrokenAfter(since);
        boolean other = m.isInGear() && m.inHand() != run.gear;
        if (other && !unbroken) {
            return Double.NaN;
        }
        double locked = drive.table().gear(run.gear).ratio() * m.outputRpm(drive.perKmh());
        double share = 1 - locked / m.rpm();
        double noise = 3 * (Double.isNaN(m.scatter()) ? 0.05 : m.scatter());
        boolean small = 1 / (1 - share) < Math.sqrt(stepBelow(run)) * 1.04;
        rowDoubtful = !small && !pull.isUnbrokenSince(since) || other && isSplit(run.gear, m.inHand());
        return share > noise && (unbroken || small) ? share : Double.NaN;
    }

    private boolean isSplit(int one, int other) {
        KnobGear a = drive.table().gear(one);
        KnobGear b = drive.table().gear(other);
        return a.lever() == b.lever() && a.range() == b.range();
    }

    private double stepBelow(GearRun run) {
        int shorter = drive.table().shorter(run.gear);
        return shorter < 0
                ? 1.3
                : drive.table().gear(shorter).ratio()
                        / drive.table().gear(run.gear).ratio();
    }

    private void slipped(LastingCondition spell) {
        HabitEvent event = event(
                spell,
                Drive.words(
                        "Clutch slipped under load for %.1f s, up to %.0f %%, pedal not pressed.",
                        spell.seconds(), 100 * spell.peak));
        if (doubtful) {
            waiting = event;
            slipTo = spell.endMicros;
        } else {
            drive.found().accept(event);
        }
    }

    private HabitEvent event(LastingCondition spell, String sentence) {
        GearRun run = gears.current;
        Optional<String> gear = run == null
                ? Optional.empty()
                : Optional.of(drive.table().gear(run.gear).name());
        return HabitEvent.of(
                EventKind.CLUTCH_SLIP,
                spell.stretch(),
                new HabitEvent.Gears(gear, gear),
                spell.integral / 0.5,
                0.85,
                EventFigures.of(EventFigure.HIGHEST_SLIP_PERCENT, 100 * spell.peak),
                sentence);
    }

    private void decide(Moment m) {
        HabitEvent event = waiting;
        if (event == null) {
            return;
        }
        boolean unbroken = pull.isUnbrokenAfter(slipFrom);
        if (unbroken && m.inHand() == slipGear) {
            drive.found().accept(event);
            waiting = null;
        } else if (!unbroken || m.micros() - slipTo > BACK_MICROS) {
            waiting = null;
        }
    }

    /**
     * A slip as large as a split, and as steady, looks like one; what tells is that the gear came back with the engine
     * pulling on and the pedal up, as two splits hardly can, unless the engine followed the wheels. To be called after the run has become the current one.
     */
    void settled(GearRun after) {
        GearRun middle = gears.slipBetween(drive.table());
        boolean pulled = middle != null
                && loadKnown
                && middle.seconds() >= drive.limits().slipSeconds()
                && (after.startMicros - middle.startMicros) < LONGEST_MICROS
                && pull.isUnbrokenFrom(middle.startMicros);
        if (middle == null || !pulled) {
            return;
        }
        double seconds = (after.startMicros - middle.startMicros) / 1e6;
        KnobGear gear = drive.table().gear(after.gear);
        double share = 1 - gear.ratio() / drive.table().gear(middle.gear).ratio();
        drive.found()
                .accept(HabitEvent.of(
                        EventKind.CLUTCH_SLIP,
                        new HabitEvent.Stretch(
                                middle.startMicros,
                                seconds,
                                middle.firstLine,
                                after.firstLine,
                                Math.max(middle.startKmh, middle.endKmh),
                                middle.highestRpm),
                        HabitEvent.Gears.in(gear.name()),
                        share * seconds / 0.5,
                        0.7,
                        EventFigures.of(EventFigure.HIGHEST_SLIP_PERCENT, 100 * share),
                        Drive.words(
                                "Clutch slipped under load for %.1f s by about %.0f %%, pedal not pressed: as much as a"
                                        + " split, but %s came back with the engine pulling on.",
                                seconds, 100 * share, gear.name())));
    }

    @Override
    public boolean isOpen() {
        return slip.isOpen() || waiting != null;
    }

    @Override
    public void interrupted() {
        slip.end();
        waiting = null;
    }
}
