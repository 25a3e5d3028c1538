package witnessmark.triplog.gear;

import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Stream;
import witnessmark.triplog.read.ClockFaults;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.RowSink;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.signal.SignalRow;

/**
 * Takes rows as they are read, puts the clock and the speeds right, and passes them on with the gear in hand. Works block
 * by block, so memory does not grow with the log; the last rows of a block are held back until what follows is known.
 * Reading, tracking and what the listener does may go on side by side ({@link HelpingHands}); what comes out is the same.
 */
public final class TrackGears implements RowSink, AutoCloseable {
    /** No power of two, or the columns' rows would crowd into the same lines of the processor's cache. */
    private static final int CAPACITY = 5000;

    private static final int HELD_BACK = 250;
    private static final double REVERSE_FIT = 0.1;
    /** An engine left at idle while the truck rolls faster than in any low gear is held by its governor. */
    private static final double IDLING = 1.12;

    private static final double IDLING_KMH = 8;
    private static final double IDLING_PEDAL = 15;
    /** From this travel on the clutch pedal counts as pressed. */
    public static final double PRESSED_PERCENT = 15;

    private final GearTable table;
    private final TrackedRows listener;
    private final CleanRows clean;
    private final Optional<HelpingHands> hands;
    private final HandOn<CleanRows.Batch> tracking;
    private final HandOn<TrackedBlock> listening;
    private final Queue<TrackedBlock> heard = new ConcurrentLinkedQueue<>();
    private final FindFrozen frozen;
    private final GearTracker tracker;
    private final FindSpeedFactor factorFinder;
    private TrackedBlock work = new TrackedBlock(CAPACITY);

    private NoiseLevel noise = NoiseLevel.USUAL;
    private SpeedFactor factor = SpeedFactor.NOMINAL;
    private SpeedFactor firstKnown = SpeedFactor.NOMINAL;
    private int alreadyCounted;
    private boolean leverMoves;
    private boolean gearMoves;
    private boolean neutralMoves;
    private int blocks;
    private int stateBefore = -1;
    /** As it was known at the rows that the listener has. */
    private double heardPerKmh;

    /** Does all its work within the calls. */
    public TrackGears(GearTable table, TrackedRows listener) {
        this(table, listener, Threads.THE_READERS);
    }

    public TrackGears(GearTable table, TrackedRows listener, Threads threads) {
        this.table = table;
        this.listener = listener;
        this.tracker = new GearTracker(table, CAPACITY);
        this.factorFinder = new FindSpeedFactor(table);
        this.frozen = new FindFrozen(table.idleRpm());
        this.heardPerKmh = table.outputRpmPerKmh();
        this.hands = threads == Threads.THEIR_OWN ? Optional.of(new HelpingHands(helpers())) : Optional.empty();
        this.listening = hands.map(h -> h.before(this::listen)).orElseGet(() -> HandOn.atOnce(this::listen));
        this.tracking = hands.map(h -> h.before((CleanRows.Batch batch) -> track(batch)))
                .orElseGet(() -> HandOn.atOnce(this::track));
        this.clean = new CleanRows(CAPACITY - HELD_BACK, table.outputRpmPerKmh(), tracking);
    }

    @Override
    public void row(SignalRow row) {
        clean.row(row);
    }

    /** Works off the rows still held; to be called once, after the last row. */
    public void end() {
        clean.end();
        tracking.end();
        track(work.rows.size());
        frozen.end();
        listening.end();
    }

    /** Gives up what is not yet worked off, and lets the helping threads go; to be called after {@link #end} as well. */
    @Override
    public void close() {
        hands.ifPresent(HelpingHands::close);
    }

    /** With the reader's own a thread for each core, until each of reading, tracking and listening has one. */
    private static int helpers() {
        return Runtime.getRuntime().availableProcessors() > 2 ? 2 : 1;
    }

    private void track(CleanRows.Batch batch) {
        work.rows.add(batch.rows, 0);
        work.jumps.addAll(batch.jumps);
        clean.takeBack(batch);
        track(Math.max(0, work.rows.size() - HELD_BACK));
    }

    private void track(int until) {
        RowBlock block = work.rows;
        if (block.size() == 0) {
            handOn(0);
            return;
        }
        if (blocks < 4 || blocks % 64 == 0) {
            noise = NoiseLevel.of(block, noise);
        }
        blocks++;
        frozen.over(block, alreadyCounted);
        work.jumps.removeIf(frozen::explains);
        factorFinder.add(block, alreadyCounted);
        factor = factorFinder.find();
        if (!firstKnown.isKnown()) {
            firstKnown = factor;
        }
        tracker.track(block, noise, factor.isKnown() ? factor.factor() : 1, stateBefore);
        System.arraycopy(tracker.scatter(), 0, work.scatter, 0, block.size());
        codes(block, until);
        if (until > 0) {
            stateBefore = tracker.state(until - 1);
        }
        handOn(until);
    }

    /** Lets go of the rows before that one; those from it on go into the next block. */
    private void handOn(int until) {
        TrackedBlock done = work;
        TrackedBlock free = heard.poll();
        TrackedBlock next = free == null ? new TrackedBlock(CAPACITY) : free;
        next.rows.add(done.rows, until);
        alreadyCounted = next.rows.size();
        frozen.dropped(until);
        done.until = until;
        done.outputRpmPerKmh = outputRpmPerKmh(factor);
        work = next;
        listening.accept(done);
    }

    private void listen(TrackedBlock block) {
        heardPerKmh = block.outputRpmPerKmh;
        for (CleanRows.Jump jump : block.jumps) {
            listener.speedJump(jump.timeMicros(), jump.line(), jump.fromKmh(), jump.toKmh(), jump.seconds());
        }
        if (block.until > 0) {
            listener.rows(block.rows, block.inHand, block.scatter, 0, block.until);
        }
        block.clear();
        heard.add(block);
    }

    private void codes(RowBlock block, int until) {
        double[] scatter = work.scatter;
        int[] inHand = work.inHand;
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] engine = block.column(Signal.ENGINE_SPEED);
        double[] clutch = block.column(Signal.CLUTCH);
        double[] lever = block.column(Signal.LEVER);
        double[] gear = block.column(Signal.CURRENT_GEAR);
        double[] back = block.column(Signal.REVERSE_SWITCH);
        double[] pedal = block.column(Signal.CLUTCH_PEDAL);
        double[] neutral = block.column(Signal.NEUTRAL_SWITCH);
        double[] throttle = block.column(Signal.ACCELERATOR);
        double idlingRpm = IDLING * table.idleRpm();
        int outOfGear = tracker.outOfGear();
        leverMoves = leverMoves || isLeft(lever, 0, until);
        gearMoves = gearMoves || isLeft(gear, 0, until);
        neutralMoves = neutralMoves || isLeft(neutral, 1, until);
        for (int i = 0; i < until; i++) {
            int reverse = lever[i] < 0 || gear[i] < 0 || back[i] > 0.5 ? reverse(block, i) : -1;
            int fitting = reverse >= 0 ? reverse : tracker.state(i);
            boolean pressed = clutch[i] > 0.5 || pedal[i] > PRESSED_PERCENT;
            boolean out = neutral[i] > 0.5 && neutralMoves || lever[i] == 0 && leverMoves || gear[i] == 0 && gearMoves;
            boolean idles = engine[i] < idlingRpm && road[i] > IDLING_KMH && !(throttle[i] > IDLING_PEDAL);
            fitting = reverse < 0 && (out || idles) ? outOfGear : fitting;
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
    private int reverse(RowBlock block, int i) {
        double ratio = block.get(Signal.ENGINE_SPEED, i) / (block.get(Signal.ROAD_SPEED, i) * outputRpmPerKmh(factor));
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
        return Stream.concat(clean.deadRoadSpeed().stream(), frozen.found().stream())
                .toList();
    }

    public ClockFaults clockFaults() {
        return clean.clockFaults();
    }

    /** Output shaft speed for each km/h as this truck really has it, as known at the rows that the listener has. */
    public double outputRpmPerKmh() {
        return heardPerKmh;
    }

    private double outputRpmPerKmh(SpeedFactor known) {
        return table.outputRpmPerKmh() * (known.isKnown() ? known.factor() : 1);
    }
}
