package witnessmark.triplog.gear;

import java.util.List;
import witnessmark.triplog.read.ClockFaults;
import witnessmark.triplog.read.TimeLine;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.RowSink;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.signal.SignalRow;

/**
 * Takes rows as they are read, puts the clock and the speeds right, and passes them on with the gear in hand. Works block
 * by block, so memory does not grow with the log; the last rows of a block are held back until what follows is known.
 */
public final class TrackGears implements RowSink {
    /** No power of two, or the columns' rows would crowd into the same lines of the processor's cache. */
    private static final int CAPACITY = 5000;

    private static final int HELD_BACK = 250;
    /** Rows closer than this add nothing but work. */
    private static final long CLOSEST_MICROS = 60_000;

    private static final double REVERSE_FIT = 0.1;
    /** An engine left at idle while the truck rolls faster than in any low gear is held by its governor. */
    private static final double IDLING = 1.12;

    private static final double IDLING_KMH = 8;
    private static final double IDLING_PEDAL = 15;
    /** From this travel on the clutch pedal counts as pressed. */
    public static final double PRESSED_PERCENT = 15;

    private final GearTable table;
    private final TrackedRows listener;
    private final TimeLine clock = new TimeLine();
    private final SpeedJumpFilter jumps = new SpeedJumpFilter();
    private final BridgeGaps gaps = new BridgeGaps();
    private final FindFrozen frozen;
    private final RowBlock block = new RowBlock(CAPACITY);
    private final GearTracker tracker;
    private final FindSpeedFactor factorFinder;
    private final int[] inHand = new int[CAPACITY];

    private NoiseLevel noise = NoiseLevel.USUAL;
    private SpeedFactor factor = SpeedFactor.NOMINAL;
    private SpeedFactor firstKnown = SpeedFactor.NOMINAL;
    private boolean afresh;
    private long lastKept = Long.MIN_VALUE / 2;
    private int alreadyCounted;
    private boolean leverMoves;
    private boolean gearMoves;
    private boolean neutralMoves;
    private int blocks;
    private int stateBefore = -1;

    public TrackGears(GearTable table, TrackedRows listener) {
        this.table = table;
        this.listener = listener;
        this.tracker = new GearTracker(table, CAPACITY);
        this.factorFinder = new FindSpeedFactor(table);
        this.frozen = new FindFrozen(table.idleRpm());
    }

    @Override
    public void row(SignalRow row) {
        TimeLine.Step step = clock.next(row);
        if (step == TimeLine.Step.START_AFRESH) {
            afresh = true;
            jumps.forget();
            gaps.forget();
        } else if (step == TimeLine.Step.LEAVE_OUT || row.timeMicros() - lastKept < CLOSEST_MICROS) {
            return;
        }
        lastKept = row.timeMicros();
        gaps.fill(row);
        double speed = row.get(Signal.ROAD_SPEED);
        jumps.pass(row, listener);
        double shaft = row.get(Signal.OUTPUT_SHAFT_SPEED);
        if (Double.isNaN(speed) && !Double.isNaN(shaft)) {
            row.set(Signal.ROAD_SPEED, shaft / table.outputRpmPerKmh());
        }
        block.add(row, afresh);
        row.set(Signal.ROAD_SPEED, speed);
        afresh = false;
        if (block.isFull()) {
            work(block.size() - HELD_BACK);
        }
    }

    /** Works off the rows still held; to be called once, after the last row. */
    public void end() {
        work(block.size());
        frozen.end();
    }

    private void work(int until) {
        if (block.size() == 0) {
            return;
        }
        if (blocks < 4 || blocks % 64 == 0) {
            noise = NoiseLevel.of(block, noise);
        }
        blocks++;
        frozen.over(block, alreadyCounted);
        factorFinder.add(block, alreadyCounted);
        factor = factorFinder.find();
        if (!firstKnown.isKnown()) {
            firstKnown = factor;
        }
        tracker.track(block, noise, factor.isKnown() ? factor.factor() : 1, stateBefore);
        double[] scatter = tracker.scatter();
        codes(scatter, until);
        listener.rows(block, inHand, scatter, 0, until);
        if (until > 0) {
            stateBefore = tracker.state(until - 1);
        }
        alreadyCounted = block.size() - until;
        block.drop(until);
        frozen.dropped(until);
    }

    private void codes(double[] scatter, int until) {
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] engine = block.column(Signal.ENGINE_SPEED);
        double[] clutch = block.column(Signal.CLUTCH);
        double[] lever = block.column(Signal.LEVER);
        double[] gear = block.column(Signal.CURRENT_GEAR);
        double[] back = block.column(Signal.REVERSE_SWITCH);
        double[] pedal = block.column(Signal.CLUTCH_PEDAL);
        double[] neutral = block.column(Signal.NEUTRAL_SWITCH);
        double[] throttle = block.column(Signal.ACCELERATOR);
        leverMoves = leverMoves || isLeft(lever, 0, until);
        gearMoves = gearMoves || isLeft(gear, 0, until);
        neutralMoves = neutralMoves || isLeft(neutral, 1, until);
        for (int i = 0; i < until; i++) {
            int reverse = lever[i] < 0 || gear[i] < 0 || back[i] > 0.5 ? reverse(i) : -1;
            int fitting = reverse >= 0 ? reverse : tracker.state(i);
            boolean pressed = clutch[i] > 0.5 || pedal[i] > PRESSED_PERCENT;
            boolean out = neutral[i] > 0.5 && neutralMoves || lever[i] == 0 && leverMoves || gear[i] == 0 && gearMoves;
            boolean idles =
                    engine[i] < IDLING * table.idleRpm() && road[i] > IDLING_KMH && !(throttle[i] > IDLING_PEDAL);
            fitting = reverse < 0 && (out || idles) ? tracker.outOfGear() : fitting;
            inHand[i] = code(road[i], engine[i], pressed, scatter[i], fitting);
        }
    }

    /** Whether the signal ever leaves its value for neutral: one that never does tells nothing. */
    private static boolean isLeft(double[] values, double neutral, int until) {
        if (until > 0 && Double.isNaN(values[0]) && Double.isNaN(values[until - 1])) {
            return false;
        }
        for (int i = 0; i < until; i++) {
            if (values[i] != neutral && !Double.isNaN(values[i])) {
                return true;
            }
        }
        return false;
    }

    private int code(double road, double engine, boolean pressed, double scatter, int fitting) {
        if (road < 0.8) {
            return InHand.STANDING;
        }
        if (engine < 100 && road >= 3) {
            return InHand.ENGINE_OFF;
        }
        if (Double.isNaN(scatter)) {
            return InHand.CANNOT_TELL;
        }
        if (fitting != tracker.outOfGear()) {
            return fitting;
        }
        if (pressed) {
            return InHand.PEDAL_DOWN;
        }
        return engine < 1.3 * table.idleRpm() ? InHand.NEUTRAL : InHand.CANNOT_TELL;
    }

    /** The reverse gear that fits; else -1. */
    private int reverse(int i) {
        double ratio = block.get(Signal.ENGINE_SPEED, i) / (block.get(Signal.ROAD_SPEED, i) * outputRpmPerKmh());
        for (int g = 0; g < table.gears().size(); g++) {
            if (table.gear(g).isReverse() && Math.abs(ratio / table.gear(g).ratio() - 1) < REVERSE_FIT) {
                return g;
            }
        }
        return -1;
    }

    public GearTable table() {
        return table;
    }

    public SpeedFactor speedFactor() {
        return factor;
    }

    /** By how much the factor of the whole log differs from the one its beginning gave. */
    public double factorDrift() {
        return firstKnown.isKnown() && factor.isKnown() ? factor.factor() / firstKnown.factor() - 1 : 0;
    }

    /** Stretches in which signals stood still while others moved; the first ones. */
    public List<FrozenSignal> frozen() {
        return frozen.found();
    }

    public ClockFaults clockFaults() {
        return clock.faults();
    }

    /** Output shaft speed for each km/h as this truck really has it. */
    public double outputRpmPerKmh() {
        return table.outputRpmPerKmh() * (factor.isKnown() ? factor.factor() : 1);
    }
}
