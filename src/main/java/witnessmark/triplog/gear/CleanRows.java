package witnessmark.triplog.gear;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import witnessmark.triplog.read.ClockFaults;
import witnessmark.triplog.read.TimeLine;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.signal.SignalRow;

/** Puts the clock and the speeds of rows right as they are read, and gathers them for the tracking. */
final class CleanRows {
    /** Rows closer than this add nothing but work. */
    private static final long CLOSEST_MICROS = 60_000;

    /** No road speed still stands at 0 then. */
    private static final double DRIVEN_KMH = 5;

    /** A road speed that cannot be, told to whoever listens before the rows it was met among. */
    record Jump(long timeMicros, long line, double fromKmh, double toKmh, double seconds) {}

    /** Rows that are handed on together, used again once they are worked off. */
    static final class Batch {
        final RowBlock rows;
        final List<Jump> jumps = new ArrayList<>();

        Batch(int capacity) {
            rows = new RowBlock(capacity);
        }
    }

    private final int capacity;
    private final double outputRpmPerKmh;
    private final HandOn<Batch> next;
    private final Queue<Batch> worked = new ConcurrentLinkedQueue<>();
    private final TimeLine clock = new TimeLine();
    private final SpeedJumpFilter jumps = new SpeedJumpFilter();
    private final BridgeGaps gaps = new BridgeGaps();
    private Batch batch;
    private boolean afresh;
    /** Whether road speed has been above 0; until then a shaft that turns fast shows that it is dead. */
    private boolean roadMoved;

    private boolean roadDead;
    private long deadFrom;
    private long deadTo;
    private long lastKept = Long.MIN_VALUE / 2;

    CleanRows(int capacity, double outputRpmPerKmh, HandOn<Batch> next) {
        this.capacity = capacity;
        this.outputRpmPerKmh = outputRpmPerKmh;
        this.next = next;
        this.batch = new Batch(capacity);
    }

    void row(SignalRow row) {
        TimeLine.Step step = clock.next(row);
        if (step == TimeLine.Step.START_AFRESH) {
            afresh = true;
            jumps.forget();
        } else if (step == TimeLine.Step.LEAVE_OUT || row.timeMicros() - lastKept < CLOSEST_MICROS) {
            return;
        }
        proveRoadSpeed(row);
        double secondsBefore = afresh ? 0 : (row.timeMicros() - lastKept) / 1e6;
        lastKept = row.timeMicros();
        double speed = row.get(Signal.ROAD_SPEED);
        if (Double.isNaN(speed) || roadDead) {
            takeFromShaft(row);
        } else {
            jumps.pass(row, batch.jumps);
        }
        batch.rows.add(row, afresh, secondsBefore);
        row.set(Signal.ROAD_SPEED, speed);
        afresh = false;
        if (batch.rows.isFull()) {
            handOn();
        }
    }

    /** What was concluded from a standstill that was none is let go where that shows. */
    private void proveRoadSpeed(SignalRow row) {
        if (roadMoved) {
            return;
        }
        roadMoved = row.get(Signal.ROAD_SPEED) > 0;
        boolean dead = !roadMoved && (roadDead || row.get(Signal.ROAD_SPEED) == 0 && shaftKmh(row) > DRIVEN_KMH);
        if (dead != roadDead) {
            afresh = true;
            jumps.forget();
            deadFrom = dead ? row.timeMicros() : deadFrom;
        }
        roadDead = dead;
        deadTo = dead ? row.timeMicros() : deadTo;
    }

    /** The stretch in which road speed stood at 0 while the output shaft turned; empty where it did not. */
    Optional<FrozenSignal> deadRoadSpeed() {
        return deadTo > deadFrom
                ? Optional.of(new FrozenSignal(Signal.ROAD_SPEED, 0, deadFrom, (deadTo - deadFrom) / 1e6))
                : Optional.empty();
    }

    private double shaftKmh(SignalRow row) {
        return row.get(Signal.OUTPUT_SHAFT_SPEED) / outputRpmPerKmh;
    }

    private void takeFromShaft(SignalRow row) {
        double kmh = shaftKmh(row);
        if (!Double.isNaN(kmh)) {
            row.set(Signal.ROAD_SPEED, kmh);
        }
    }

    private void handOn() {
        gaps.fill(batch.rows);
        next.accept(batch);
        Batch free = worked.poll();
        batch = free == null ? new Batch(capacity) : free;
    }

    /** Hands on the rows still held; to be called once, after the last row. */
    void end() {
        handOn();
    }

    /** Takes a batch back that nobody needs any more; may be called on another thread. */
    void takeBack(Batch used) {
        used.rows.clear();
        used.jumps.clear();
        worked.add(used);
    }

    ClockFaults clockFaults() {
        return clock.faults();
    }
}
