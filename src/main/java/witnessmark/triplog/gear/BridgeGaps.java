package witnessmark.triplog.gear;

import java.util.Arrays;
import java.util.stream.IntStream;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.signal.SignalRow;

/** Bridges values that are missing for a moment: a switch that says nothing has not gone back to 0. */
final class BridgeGaps {
    private static final long LONGEST_MICROS = 300_000;

    private static final int[] SIGNALS = {
        Signal.CLUTCH.ordinal(),
        Signal.CLUTCH_PEDAL.ordinal(),
        Signal.ACCELERATOR.ordinal(),
        Signal.ENGINE_TORQUE.ordinal(),
        Signal.LEVER.ordinal(),
        Signal.NEUTRAL_SWITCH.ordinal(),
        Signal.REVERSE_SWITCH.ordinal(),
        Signal.RANGE_KNOB.ordinal()
    };

    /** Those of the signals that any row so far gave. */
    private int[] given = {};

    private long givenBits;
    private final double[] last = new double[SIGNALS.length];
    private final long[] time = new long[SIGNALS.length];

    BridgeGaps() {
        Arrays.fill(last, Double.NaN);
    }

    /** Fills in the last value where the row has none and it is no more than 0.3 s old. */
    void fill(SignalRow row) {
        if (row.given() != givenBits) {
            givenBits = row.given();
            given = IntStream.range(0, SIGNALS.length)
                    .filter(i -> (givenBits >>> SIGNALS[i] & 1) != 0)
                    .toArray();
        }
        for (int i : given) {
            double value = row.at(SIGNALS[i]);
            if (!Double.isNaN(value)) {
                last[i] = value;
                time[i] = row.timeMicros();
            } else if (!Double.isNaN(last[i])) {
                if (row.timeMicros() - time[i] > LONGEST_MICROS) {
                    last[i] = Double.NaN;
                } else {
                    row.set(SIGNALS[i], last[i]);
                }
            }
        }
    }

    void forget() {
        Arrays.fill(last, Double.NaN);
    }
}
