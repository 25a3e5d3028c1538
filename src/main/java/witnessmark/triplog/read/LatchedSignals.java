package witnessmark.triplog.read;

import java.util.Arrays;
import java.util.stream.IntStream;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.signal.SignalRow;

/**
 * The last value of each signal from the bus. A value is dropped when its sender says "not available" or "error", or
 * falls silent for longer than its own habit. Where two controllers send one signal, the first is kept to until silent.
 */
final class LatchedSignals {
    private static final long SHORTEST_STALE_MICROS = 2_500_000;
    private static final long LONGEST_STALE_MICROS = 60_000_000;
    private static final int NOBODY = -1;

    private final SignalRow row = new SignalRow();
    private final double[] values = new double[Signal.count()];
    private final long[] taken = new long[Signal.count()];
    private final long[] staleAfter = new long[Signal.count()];
    private final int[] sender = new int[Signal.count()];
    /** Ordinals of the signals that ever had a value; the others need not be looked at for each row. */
    private int[] seen = {};

    private boolean fineDistance;
    private final ReadCounts counts;

    LatchedSignals(ReadCounts counts) {
        this.counts = counts;
        forget();
    }

    void forget() {
        Arrays.fill(values, Double.NaN);
        Arrays.fill(taken, Long.MIN_VALUE / 2);
        Arrays.fill(staleAfter, SHORTEST_STALE_MICROS);
        Arrays.fill(sender, NOBODY);
        fineDistance = false;
    }

    void take(J1939Field field, long raw, int source, long time) {
        int signal = field.signalIndex();
        boolean silent = time - taken[signal] > staleAfter[signal];
        if (sender[signal] != source && sender[signal] != NOBODY && !silent) {
            return;
        }
        FieldStatus status = field.status(raw);
        if (status != FieldStatus.VALID) {
            refuse(signal, status, source);
            return;
        }
        if (isCoarseDistance(field)) {
            return;
        }
        if (taken[signal] > Long.MIN_VALUE / 2) {
            long twice = 2 * (time - taken[signal]);
            staleAfter[signal] = Math.max(SHORTEST_STALE_MICROS, Math.min(LONGEST_STALE_MICROS, twice));
        }
        double value = field.value(raw);
        if (!field.isPlausible(value)) {
            refuse(signal, FieldStatus.ERROR, source);
            return;
        }
        if (counts.valid[signal] == 0) {
            seen = IntStream.concat(IntStream.of(seen), IntStream.of(signal)).toArray();
        }
        values[signal] = value;
        taken[signal] = time;
        sender[signal] = source;
        counts.valid[signal]++;
    }

    private void refuse(int signal, FieldStatus status, int source) {
        if (sender[signal] == source) {
            values[signal] = Double.NaN;
        }
        if (status == FieldStatus.NOT_AVAILABLE) {
            counts.notAvailable[signal]++;
        } else {
            counts.error[signal]++;
        }
    }

    /** Once the 5 m distance is on the bus the 125 m one is left aside, for the two need not agree. */
    private boolean isCoarseDistance(J1939Field field) {
        if (field == J1939Field.FINE_TOTAL_DISTANCE) {
            fineDistance = true;
        }
        return field == J1939Field.TOTAL_DISTANCE && fineDistance;
    }

    SignalRow row(long time, long line) {
        for (int signal : seen) {
            row.set(signal, time - taken[signal] > staleAfter[signal] ? Double.NaN : values[signal]);
        }
        row.stamp(time, line);
        return row;
    }
}
