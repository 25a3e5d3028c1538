package witnessmark.triplog.gear;

import witnessmark.triplog.signal.RowBlock;

/** Takes the rows of a log with what is in hand at each, in stretches, in order, each row once. */
public interface TrackedRows {
    /**
     * @param inHand for each row of the block a gear's index or a code of {@link InHand}
     * @param scatter for each row the relative scatter of the ratio, NaN where it says nothing
     */
    void rows(RowBlock block, int[] inHand, double[] scatter, int from, int to);

    /** Road speed changed faster than any vehicle can; the rows until it is sensible again count as without speed. */
    void speedJump(long timeMicros, long line, double fromKmh, double toKmh, double seconds);
}
