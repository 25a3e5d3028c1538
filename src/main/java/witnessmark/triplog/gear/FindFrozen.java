package witnessmark.triplog.gear;

import java.util.ArrayList;
import java.util.List;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/**
 * Takes out signals that stand still, row after row, while others move. A still value alone says nothing: an engine at
 * idle, a steady foot and a cruise at one speed stand still too.
 */
final class FindFrozen {
    private static final int MOST_KEPT = 50;
    /** So few rows are no stretch worth a look. */
    private static final int FEW_ROWS = 4;
    /** So long a value may stand still by its rounding. */
    private static final double LEAST_SECONDS = 6;

    private static final double LEAST_FOOT_SECONDS = 30;
    /** The engine, or the wheels, moved by this share meanwhile. */
    private static final double MOVED = 0.2;

    /** Where a road speed hardly ever comes twice, so fine it is: standing still for so many rows is not its rounding. */
    private static final long FINE_ROWS = 300;

    private static final double FINE_REPEATS = 0.1;
    private static final int FINE_STILL_ROWS = 10;
    private static final double MOVED_A_LITTLE = 0.05;

    private static final double IDLING = 1.15;
    private static final double IDLE_MOVED_KMH = 25;
    private static final double ROLLING_KMH = 3;

    private static final double AT_ITS_END_MICROS = 5e6;

    private final Watch[] watches;
    private final List<FrozenSignal> found = new ArrayList<>();

    FindFrozen(double idleRpm) {
        watches = new Watch[] {
            new Watch(Signal.ENGINE_SPEED, idleRpm), new Watch(Signal.ROAD_SPEED, idleRpm),
            new Watch(Signal.OUTPUT_SHAFT_SPEED, idleRpm), new Watch(Signal.ACCELERATOR, idleRpm),
            new Watch(Signal.INPUT_SHAFT_SPEED, idleRpm)
        };
    }

    List<FrozenSignal> found() {
        return List.copyOf(found);
    }

    /** Looks at the rows from {@code from} on, the ones before having been looked at, and takes out what stands still. */
    void over(RowBlock block, int from) {
        for (Watch watch : watches) {
            if (block.gives(watch.signal)) {
                watch.over(block, from);
            }
        }
    }

    /** Whether road speed only left the value at which it had stood still. */
    boolean explains(CleanRows.Jump jump) {
        return found.stream()
                .anyMatch(f -> f.signal() == Signal.ROAD_SPEED
                        && f.value() == jump.fromKmh()
                        && Math.abs(f.fromMicros() + f.seconds() * 1e6 - jump.timeMicros()) < AT_ITS_END_MICROS);
    }

    /** Notes what stands still to the end of the log; to be called once. */
    void end() {
        for (Watch watch : watches) {
            watch.close();
        }
    }

    /** Rows have been dropped from the front of the block. */
    void dropped(int rows) {
        for (Watch watch : watches) {
            watch.begin = Math.max(0, watch.begin - rows);
        }
    }

    /** One signal, and the stretch in which it stands still at present. */
    private final class Watch {
        private final Signal signal;
        private final double idleRpm;
        private double value = Double.NaN;
        private int begin;
        private long beginMicros;
        private double lowestOther;
        private double highestOther;
        private double wander;
        private double lastOther = Double.NaN;
        private double highestThrottle;
        /** Or braked, or shifted: no foot stays on the accelerator then. */
        private boolean stood;

        private boolean frozen;
        private long lastMicros;
        /** Rows with another value than the row before, and rows with the same, standstill left out. */
        private long changes;

        private long repeats;

        Watch(Signal signal, double idleRpm) {
            this.signal = signal;
            this.idleRpm = idleRpm;
        }

        void over(RowBlock block, int from) {
            double[] own = block.column(signal);
            double[] other = block.column(other());
            double[] throttle = block.column(Signal.ACCELERATOR);
            double[] brake = block.column(Signal.BRAKE);
            double[] clutch = block.column(Signal.CLUTCH);
            double[] neutral = block.column(Signal.NEUTRAL_SWITCH);
            int size = block.size();
            for (int i = from; i < size; i++) {
                double now = own[i];
                if (Double.isNaN(now) && isMissing(own, i, block)) {
                    continue;
                }
                if (!(now == value) || block.isAfresh(i)) {
                    if (frozen || i - begin > FEW_ROWS) {
                        end(block, i);
                    }
                    repeats += value > ROLLING_KMH ? i - begin - 1 : 0;
                    int last = lastOfChanging(own, i, size);
                    changes += last - i + 1;
                    i = last;
                    begin(block, i, other[i]);
                } else if (other[i] != lastOther && !Double.isNaN(other[i])) {
                    moved(other[i]);
                    highestThrottle = throttle[i] > highestThrottle ? throttle[i] : highestThrottle;
                    stood |= other[i] < ROLLING_KMH || brake[i] > 0.5 || clutch[i] > 0.5 || neutral[i] > 0.5;
                }
            }
            takeOut(block, size);
        }

        private void moved(double other) {
            lowestOther = other < lowestOther || Double.isNaN(lowestOther) ? other : lowestOther;
            highestOther = other > highestOther || Double.isNaN(highestOther) ? other : highestOther;
            wander += Double.isNaN(lastOther) ? 0 : Math.abs(other - lastOther);
            lastOther = other;
        }

        /** Whether a value that is not given is the only one, and the one that stood still goes on after it. */
        private boolean isMissing(double[] own, int i, RowBlock block) {
            return i + 1 < block.size() && own[i + 1] == value && !block.isAfresh(i) && !block.isAfresh(i + 1);
        }

        /** Most values differ from the next: the first row from there on that the next one may repeat. */
        private static int lastOfChanging(double[] own, int from, int size) {
            int i = from;
            double now = own[from];
            while (i + 1 < size) {
                double next = own[i + 1];
                if (now == next) {
                    break;
                }
                now = next;
                i++;
            }
            return i;
        }

        private void begin(RowBlock block, int row, double firstOther) {
            value = block.get(signal, row);
            begin = row;
            beginMicros = block.timeMicros(row);
            lowestOther = firstOther;
            highestOther = firstOther;
            lastOther = firstOther;
            wander = 0;
            highestThrottle = 0;
            stood = false;
        }

        private Signal other() {
            return signal == Signal.ENGINE_SPEED || signal == Signal.ACCELERATOR
                    ? Signal.ROAD_SPEED
                    : Signal.ENGINE_SPEED;
        }

        private void end(RowBlock block, int to) {
            takeOut(block, to);
            close();
        }

        void close() {
            if (frozen && found.size() < MOST_KEPT) {
                found.add(new FrozenSignal(signal, value, beginMicros, (lastMicros - beginMicros) / 1e6));
            }
            frozen = false;
        }

        /** The rows of the stretch so far no longer give the signal, if it is frozen. */
        private void takeOut(RowBlock block, int to) {
            if (to == 0
                    || begin >= to
                    || Double.isNaN(value)
                    || !isFrozen(to - begin, (block.timeMicros(to - 1) - beginMicros) / 1e6)) {
                return;
            }
            double[] own = block.column(signal);
            for (int i = begin; i < to; i++) {
                own[i] = Double.NaN;
            }
            begin = to;
            frozen = true;
            lastMicros = block.timeMicros(to - 1);
        }

        private boolean isFrozen(int rows, double seconds) {
            if (seconds < LEAST_SECONDS) {
                return false;
            }
            return switch (signal) {
                case ENGINE_SPEED -> value > 0 && isEngineFrozen(seconds);
                case ACCELERATOR -> value > 2
                        && value < 98
                        && seconds > LEAST_FOOT_SECONDS
                        && stood
                        && highestOther > 3 * ROLLING_KMH;
                default -> value > ROLLING_KMH && highestOther - lowestOther > leastMove(rows) * highestOther;
            };
        }

        private double leastMove(int rows) {
            boolean fine = changes > FINE_ROWS && repeats < FINE_REPEATS * changes;
            return fine && (frozen || rows >= FINE_STILL_ROWS) && signal != Signal.INPUT_SHAFT_SPEED
                    ? MOVED_A_LITTLE
                    : MOVED;
        }

        /** At idle the wheels may slow down for long; going up and down they need an engine that moves. */
        private boolean isEngineFrozen(double seconds) {
            if (value > IDLING * idleRpm) {
                return highestOther > ROLLING_KMH && highestOther - lowestOther > MOVED * highestOther;
            }
            boolean pulled = highestThrottle > 40 && highestOther - lowestOther > ROLLING_KMH;
            return pulled || wander > 1.6 * (highestOther - lowestOther) && highestOther - lowestOther > IDLE_MOVED_KMH;
        }
    }
}
