package witnessmark.triplog.event;

import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.gear.TrackedRows;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** Runs all detectors over the tracked rows of one log. */
public final class FindEvents implements TrackedRows {
    /** Well above idle an engine turns the wheels, or is about to. */
    private static final double PULLING_TO_IDLE = 1.3;
    /** Rows may come a little slower than the kind asks for. */
    private static final double TOO_SLOW = 1.25;

    private final Drive drive;
    private final WaitingEvents doubtful;
    private final Chances chances = new Chances();
    private final Trust trust;
    private final Moment moment;
    private final TorqueAndLever pull = new TorqueAndLever();
    private final LastGears gears = new LastGears();
    private final Presses presses = new Presses();
    private final ShiftEvents shifts;
    private final LeverGears levers;
    private final StartEvents starts;
    private final RareEvents rare;
    private final SplitEvents splits;
    private final FindRuns runs;
    private final RollingEvents rolling;
    private final EngineEvents engine;
    private final ClutchEvents clutch;
    private final SlipEvents slips;
    private final OilEvents oil;
    private final KnobEvents knob;
    private final PowerTakeOffEvents takeOff;
    private final SteadyRows steady;
    private final SpeedPace pace = new SpeedPace();
    private final Detector[] detectors;
    private boolean leverGiven;
    private boolean knobGiven;
    private boolean takeOffGiven;
    /** Running median of the time between rows. */
    private double usualSeconds;

    /**
     * @param outputRpmPerKmh output shaft speed for each km/h as the tracking knows it by now
     * @param found takes each event as it is found, in about the order of their ends
     */
    public FindEvents(GearTable table, HabitLimits limits, DoubleSupplier outputRpmPerKmh, Consumer<HabitEvent> found) {
        this.trust = new Trust(table.idleRpm());
        this.moment = new Moment(trust, table.idleRpm());
        this.doubtful = new WaitingEvents(trust, chances, event -> {
            if (isFastEnough(event.kind())) {
                found.accept(event);
            }
        });
        this.drive = new Drive(table, limits, outputRpmPerKmh, chances, event -> {
            if (isFastEnough(event.kind())) {
                doubtful.accept(event);
            }
        });
        this.shifts = new ShiftEvents(drive, presses, pull);
        this.levers = new LeverGears(table);
        this.starts = new StartEvents(drive, trust, shifts::startedWithoutPedal);
        this.rare = new RareEvents(drive, gears, levers);
        this.splits = new SplitEvents(drive, gears);
        this.runs = new FindRuns(drive, starts, this::settled);
        this.slips = new SlipEvents(drive, gears, starts, pull);
        this.rolling = new RollingEvents(drive, gears);
        this.engine = new EngineEvents(drive, gears);
        this.clutch = new ClutchEvents(drive, starts, gears);
        this.oil = new OilEvents(drive);
        this.knob = new KnobEvents(drive);
        this.takeOff = new PowerTakeOffEvents(drive);
        this.steady = new SteadyRows(drive);
        this.detectors = new Detector[] {
            presses, shifts, starts, runs, rolling, engine, clutch, slips, oil, rare, splits, knob, takeOff
        };
    }

    private boolean isFastEnough(EventKind kind) {
        double seconds = kind.needsRatioAtOnce() ? Math.max(usualSeconds, pace.seconds()) : usualSeconds;
        return !kind.isMomentary() || seconds * kind.leastHertz(trust.isPedalBelieved()) <= TOO_SLOW;
    }

    private void settled(GearRun run) {
        GearRun from = gears.current;
        if (from != null && from.gear != run.gear && pull.excludesLeverShift(drive.table(), from, run)) {
            return;
        }
        if (starts.isStarting() && levers.contradicts(drive.table().gear(run.gear))) {
            // A clutch that slips for long dwells where another gear would have it.
            return;
        }
        gears.settled(run);
        levers.settled(run);
        shifts.settled(run);
        starts.settled(run);
        rare.settled(run);
        splits.settled(run);
        slips.settled(run);
    }

    @Override
    public void rows(RowBlock block, int[] inHand, double[] scatter, int from, int to) {
        moment.over(block);
        leverGiven =
                block.gives(Signal.LEVER) || block.gives(Signal.NEUTRAL_SWITCH) || block.gives(Signal.CURRENT_GEAR);
        knobGiven = block.gives(Signal.RANGE_KNOB);
        takeOffGiven = block.gives(Signal.POWER_TAKE_OFF);
        pace.over(block, from, to);
        chances.covered(block, inHand, from, to, PULLING_TO_IDLE * drive.table().idleRpm(), moment);
        int row = from;
        while (row < to) {
            look(block, inHand, scatter, row);
            int last = lastAlike(block, inHand, row, to);
            if (last > row + 1) {
                // What lies between the first and the last row of a steady stretch leaves every other detector as it
                // is.
                learnPace(block, row + 1, last);
                pull.watch(block, row + 1, last, trust);
                boolean sure = runs.isSureOf(inHand[row]);
                for (int i = row + 1; i < last && !sure; i++) {
                    moment.at(i, inHand[i], scatter[i]);
                    runs.row(moment);
                }
                for (int i = splits.firstToSee(block, row + 1, last); i < last; i++) {
                    moment.at(i, inHand[i], scatter[i]);
                    splits.row(moment);
                }
                moment.at(last - 1, inHand[last - 1], scatter[last - 1]);
                runs.goesOn(moment);
                rare.goesOn(moment);
                row = last;
            } else {
                row++;
            }
        }
    }

    private void look(RowBlock block, int[] inHand, double[] scatter, int row) {
        moment.at(row, inHand[row], scatter[row]);
        if (block.isAfresh(row)) {
            interrupted();
        }
        learnPace(block, row, row + 1);
        pull.watch(moment);
        lookAtMoment();
    }

    /** All detectors, in their order; called by name, which costs half of what a loop over the interface does. */
    private void lookAtMoment() {
        if (leverGiven) {
            levers.row(moment);
        }
        presses.row(moment);
        shifts.row(moment);
        starts.row(moment);
        runs.row(moment);
        rolling.row(moment);
        engine.row(moment);
        clutch.row(moment);
        slips.row(moment);
        oil.row(moment);
        rare.row(moment);
        splits.row(moment);
        if (knobGiven) {
            knob.row(moment);
        }
        if (takeOffGiven) {
            takeOff.row(moment);
        }
    }

    /** Learns how often rows come. */
    private void learnPace(RowBlock block, int from, int to) {
        double[] seconds = block.secondsBefore();
        double usual = usualSeconds;
        for (int i = from; i < to; i++) {
            if (seconds[i] > 0) {
                usual = usual == 0 ? seconds[i] : usual * (seconds[i] > usual ? 1.02 : 1 / 1.02);
            }
        }
        usualSeconds = usual;
    }

    /** The last row of the steady stretch that begins with the row just looked at; the row itself if none does. */
    private int lastAlike(RowBlock block, int[] inHand, int row, int to) {
        int code = inHand[row];
        boolean settled = code >= 0 && runs.isSettledOn(code) && gears.isCurrent(code)
                || code == InHand.STANDING && starts.hasStood();
        if (!settled) {
            return row;
        }
        for (Detector detector : detectors) {
            if (detector.isOpen()) {
                return row;
            }
        }
        return steady.until(block, inHand, row, to) - 1;
    }

    @Override
    public void speedJump(long timeMicros, long line, double fromKmh, double toKmh, double seconds) {
        drive.found()
                .accept(HabitEvent.of(
                        EventKind.IMPOSSIBLE_SPEED_JUMP,
                        new HabitEvent.Stretch(timeMicros, seconds, line, line, Math.max(fromKmh, toKmh), 0),
                        HabitEvent.Gears.NONE,
                        0.5,
                        0.95,
                        EventFigures.of(EventFigure.FROM_KMH, fromKmh).and(EventFigure.TO_KMH, toKmh),
                        Drive.words(
                                "Road speed went from %.0f to %.0f km/h within %.1f s: sensor or data, not the truck.",
                                fromKmh, toKmh, seconds)));
    }

    private void interrupted() {
        for (Detector detector : detectors) {
            detector.interrupted();
        }
        gears.forget();
        levers.interrupted();
    }

    /** The gears found cannot be believed; to be called before {@link #end}. */
    public void doubtGears(String why) {
        chances.doubtGears(why);
    }

    /** Ends whatever is still open; to be called once, after the last row. */
    public void end() {
        interrupted();
        shifts.end();
        trust.doubts().forEach(chances::doubt);
        chances.pace(pace.seconds());
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
