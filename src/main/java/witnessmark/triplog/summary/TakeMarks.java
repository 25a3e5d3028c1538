package witnessmark.triplog.summary;

import java.util.Collections;
import java.util.PriorityQueue;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** Takes the marks of the rows of one log, in memory that does not grow with it. */
final class TakeMarks {
    /** Rows of a stretch, each another than the one before: a steady truck is like any other. */
    private static final int STRETCH = 12;

    private static final int MOST = 24;
    private static final double MOVING_KMH = 0.8;
    private static final long FACTOR = 0x9E3779B97F4A7C15L;
    private static final long FACTOR_OF_STRETCH = power();

    private final long[] ring = new long[STRETCH];
    private final PriorityQueue<Long> least = new PriorityQueue<>(Collections.reverseOrder());
    private long taken;
    private long sum;
    private double lastKmh = Double.NaN;
    private double lastRpm = Double.NaN;

    private static long power() {
        long power = 1;
        for (int i = 0; i < STRETCH; i++) {
            power *= FACTOR;
        }
        return power;
    }

    void rows(RowBlock block, int first, int end) {
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] engine = block.column(Signal.ENGINE_SPEED);
        for (int i = first; i < end; i++) {
            boolean tells = road[i] >= MOVING_KMH && engine[i] > 0 && !(road[i] == lastKmh && engine[i] == lastRpm);
            if (block.isAfresh(i)) {
                taken = 0;
            }
            if (tells) {
                lastKmh = road[i];
                lastRpm = engine[i];
                take(mixed(Double.doubleToLongBits(road[i]) * FACTOR + Double.doubleToLongBits(engine[i])));
            }
        }
    }

    private void take(long row) {
        int at = (int) (taken % STRETCH);
        sum = taken == 0 ? row : sum * FACTOR + row - (taken >= STRETCH ? ring[at] * FACTOR_OF_STRETCH : 0);
        ring[at] = row;
        taken++;
        if (taken >= STRETCH) {
            offer(mixed(sum) >>> 1);
        }
    }

    private void offer(long hash) {
        if (least.size() == MOST && hash >= least.peek() || least.contains(hash)) {
            return;
        }
        if (least.size() == MOST) {
            least.remove();
        }
        least.add(hash);
    }

    /** Spreads every bit over all others (the finishing steps of SplitMix64; Steele, Lea and Flood 2014). */
    private static long mixed(long bits) {
        long spread = (bits ^ bits >>> 30) * 0xBF58476D1CE4E5B9L;
        spread = (spread ^ spread >>> 27) * 0x94D049BB133111EBL;
        return spread ^ spread >>> 31;
    }

    RowMarks marks() {
        return new RowMarks(least.stream().map(h -> String.format("%016x", h)).toList());
    }
}
