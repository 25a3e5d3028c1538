package witnessmark.triplog.event;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.TrackedRows;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** Runs all detectors over the tracked rows of one log. */
public final class FindEvents implements TrackedRows {
    private static final double PULLING_KMH = 10;
    /** Rows may come a little slower than the kind asks for. */
    private static final double TOO_SLOW = 1.25;
    /** By then every spell that a calm row does not continue has ended, but for one of hot oil. */
    private static final long LONGEST_PATIENCE_MICROS = 4_000_000;

    private final Drive drive;
    private final HeldEvents doubtful;
    private final Chances chances = new Chances();
    private final Trust trust;
    private final Moment moment;
    private final Pull pull = new Pull();
    private final LastGears gears = new LastGears();
    private final ShiftEvents shifts;
    private final StartEvents starts;
    private final ClutchDropEvents drops;
    private final SplitEvents splits;
    private final FindRuns runs;
    private final SlipEvents slips;
    private final OilEvents oil;
    private final List<Detector> detectors;
    private long calmMicros;
    /** Running median of the time between rows. */
    private double usualSeconds;

    /**
     * @param outputRpmPerKmh output shaft speed for each km/h as the tracking knows it by now
     * @param found takes each event as it is found, in about the order of their ends
     */
    public FindEvents(GearTable table, HabitLimits limits, DoubleSupplier outputRpmPerKmh, Consumer<HabitEvent> found) {
        this.trust = new Trust(table.idleRpm());
        this.moment = new Moment(trust, table.idleRpm());
        this.doubtful = new HeldEvents(trust, chances, found);
        this.drive = new Drive(table, limits, outputRpmPerKmh, chances, event -> {
            if (!event.kind().isMomentary() || usualSeconds * event.kind().leastHertz() <= TOO_SLOW) {
                doubtful.accept(event);
            }
        });
        Presses presses = new Presses();
        this.shifts = new ShiftEvents(drive, presses, pull);
        this.starts = new StartEvents(drive, trust);
        this.drops = new ClutchDropEvents(drive);
        this.splits = new SplitEvents(drive, gears);
        this.runs = new FindRuns(drive, starts, this::settled);
        this.slips = new SlipEvents(drive, gears, starts, pull);
        this.oil = new OilEvents(drive);
        this.detectors = List.of(
                presses,
                shifts,
                starts,
                runs,
                new RollingEvents(drive, gears),
                new EngineEvents(drive, gears),
                new ClutchEvents(drive, starts),
                slips,
                oil,
                drops,
                new DiscEvents(drive, gears),
                new ReverseEvents(drive),
                splits,
                new IdleEvents(drive),
                new KnobEvents(drive),
                new PowerTakeOffEvents(drive));
    }

    private void settled(GearRun run) {
        GearRun from = gears.current;
        if (from != null && from.gear != run.gear && pull.excludesLeverShift(drive.table(), from, run)) {
            return;
        }
        gears.settled(run);
        shifts.settled(run);
        starts.settled(run);
        drops.settled(run);
        splits.settled(run);
        slips.settled(run);
    }

    @Override
    public void rows(RowBlock block, int[] inHand, double[] scatter, int from, int to) {
        moment.over(block);
        for (int i = from; i < to; i++) {
            moment.at(i, inHand[i], scatter[i]);
            if (block.isAfresh(i)) {
                interrupted();
            }
            if (moment.seconds() > 0) {
                usualSeconds = usualSeconds == 0
                        ? moment.seconds()
                        : usualSeconds * (moment.seconds() > usualSeconds ? 1.02 : 1 / 1.02);
            }
            boolean pulling = moment.kmh() > PULLING_KMH
                    && moment.rpm() > 1.3 * drive.table().idleRpm()
                    && !moment.isPedalPressed();
            chances.covered(moment.seconds(), moment.kmh(), pulling, inHand[i] >= 0);
            splits.watch(moment);
            pull.watch(moment);
            if (isCalm()) {
                runs.goesOn(moment);
                continue;
            }
            for (Detector detector : detectors) {
                detector.row(moment);
            }
        }
    }

    /**
     * Whether this is one more row of steady driving, in which no detector has anything open or to begin: the settled
     * gear in hand for some time, pedal up, engine between lowest pulling and governed speed, oil not hot, no knob to
     * watch. Such rows are most of a log.
     */
    private boolean isCalm() {
        GearRun run = gears.current;
        boolean calm = run != null
                && moment.inHand() == run.gear
                && run.isSure()
                && !oil.isOpen()
                && !moment.isPedalPressed()
                && moment.rpm() > drive.table().lowestPullingRpm()
                && moment.rpm() < drive.table().governedRpm()
                && !(moment.get(Signal.GEARBOX_OIL) > drive.limits().hotOilCelsius())
                && !(moment.get(Signal.CLUTCH_FLOOR) > 0)
                && !(moment.get(Signal.POWER_TAKE_OFF) > 0)
                && Double.isNaN(moment.get(Signal.RANGE_KNOB))
                && Double.isNaN(moment.get(Signal.INPUT_SHAFT_SPEED))
                && !moment.isAfresh();
        if (!calm) {
            calmMicros = moment.micros();
            return false;
        }
        return moment.micros() - calmMicros > LONGEST_PATIENCE_MICROS;
    }

    @Override
    public void speedJump(long timeMicros, long line, double fromKmh, double toKmh, double seconds) {
        drive.found()
                .accept(new HabitEvent(
                        EventKind.IMPOSSIBLE_SPEED_JUMP,
                        timeMicros,
                        seconds,
                        line,
                        line,
                        Math.max(fromKmh, toKmh),
                        0,
                        Optional.empty(),
                        Optional.empty(),
                        0.5,
                        0.95,
                        Drive.figures("from-km-h", fromKmh, "to-km-h", toKmh),
                        Drive.words(
                                "Road speed went from %.0f to %.0f km/h within %.1f s: sensor or data, not the truck.",
                                fromKmh, toKmh, seconds)));
    }

    private void interrupted() {
        detectors.forEach(Detector::interrupted);
        gears.forget();
    }

    /** The gears found cannot be believed; to be called before {@link #end}. */
    public void doubtGears(String why) {
        chances.doubtGears(why);
    }

    /** Ends whatever is still open; to be called once, after the last row. */
    public void end() {
        interrupted();
        trust.doubts().forEach(chances::doubt);
        doubtful.end();
    }

    public Chances chances() {
        return chances;
    }

    /** Changes from one settled gear to another on the move. */
    public long shifts() {
        return shifts.shifts();
    }

    public long leverShifts() {
        return shifts.leverShifts();
    }

    public long rangeShifts() {
        return shifts.rangeShifts();
    }
}
