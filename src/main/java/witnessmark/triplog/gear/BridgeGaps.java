package witnessmark.triplog.gear;

import java.util.Arrays;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** Bridges values that are missing for a moment: a switch that says nothing has not gone back to 0. */
final class BridgeGaps {
    private static final long LONGEST_MICROS = 300_000;
    /** Over more than a row or two the second press of a shift may have come and gone. */
    private static final long LONGEST_PEDAL_MICROS = 150_000;

    private static final Signal[] SIGNALS = {
        Signal.CLUTCH,
        Signal.CLUTCH_PEDAL,
        Signal.ACCELERATOR,
        Signal.ENGINE_TORQUE,
        Signal.LEVER,
        Signal.NEUTRAL_SWITCH,
        Signal.REVERSE_SWITCH,
        Signal.RANGE_KNOB
    };

    private final double[] last = new double[SIGNALS.length];
    private final long[] time = new long[SIGNALS.length];

    BridgeGaps() {
        Arrays.fill(last, Double.NaN);
    }

    /**
     * Fills in the last value where a row has none and it is no more than 0.3 s old, of the clutch 0.15 s, from the block
     * before too; never over an interruption of the record.
     */
    void fill(RowBlock block) {
        for (int s = 0; s < SIGNALS.length; s++) {
            if (block.gives(SIGNALS[s])) {
                fill(block, block.column(SIGNALS[s]), s);
            }
        }
    }

    private void fill(RowBlock block, double[] column, int s) {
        boolean pedal = SIGNALS[s] == Signal.CLUTCH || SIGNALS[s] == Signal.CLUTCH_PEDAL;
        long longest = pedal ? LONGEST_PEDAL_MICROS : LONGEST_MICROS;
        int known = -1;
        for (int i = 0; i < block.size(); i++) {
            if (!Double.isNaN(column[i])) {
                known = i;
                continue;
            }
            remember(block, column, known, s);
            known = -1;
            if (block.isAfresh(i) || block.timeMicros(i) - time[s] > longest) {
                last[s] = Double.NaN;
            }
            column[i] = last[s];
        }
        remember(block, column, known, s);
    }

    private void remember(RowBlock block, double[] column, int known, int s) {
        if (known >= 0) {
            last[s] = column[known];
            time[s] = block.timeMicros(known);
        }
    }
}
