package witnessmark.triplog.gear;

import java.util.ArrayList;
import java.util.List;
import witnessmark.triplog.signal.RowBlock;

/** Rows with what is in hand at each, as the tracking hands them on; used again once they are looked at. */
final class TrackedBlock {
    final RowBlock rows;
    final int[] inHand;
    final double[] scatter;
    final List<CleanRows.Jump> jumps = new ArrayList<>();
    /** The rows before this one are tracked; those from it on only wait for what follows. */
    int until;
    /** Output shaft speed for each km/h as it was known by then. */
    double outputRpmPerKmh;

    TrackedBlock(int capacity) {
        rows = new RowBlock(capacity);
        inHand = new int[capacity];
        scatter = new double[capacity];
    }

    void clear() {
        rows.clear();
        jumps.clear();
        until = 0;
    }
}
