package witnessmark.triplog.summary;

import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** Seconds spent at each road speed and engine speed: on it each gear is a ray from the corner. */
public final class SpeedMap {
    public static final double KMH_STEP = 2;
    public static final double RPM_STEP = 50;
    private static final int KMH_BINS = 80;
    private static final int RPM_BINS = 70;

    /** A column that was never driven in stays empty and takes no room. */
    private final double[][] cells = new double[KMH_BINS][];

    void add(RowBlock block, int from, int to) {
        double[] seconds = block.secondsBefore();
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] engine = block.column(Signal.ENGINE_SPEED);
        for (int i = from; i < to; i++) {
            if (road[i] >= 0 && engine[i] >= 0) {
                int column = Math.min(KMH_BINS - 1, (int) (road[i] * (1 / KMH_STEP)));
                int row = Math.min(RPM_BINS - 1, (int) (engine[i] * (1 / RPM_STEP)));
                column(column)[row] += SumUp.lasting(seconds[i]);
            }
        }
    }

    void add(SpeedMap other) {
        for (int c = 0; c < KMH_BINS; c++) {
            if (other.cells[c] != null) {
                for (int r = 0; r < RPM_BINS; r++) {
                    column(c)[r] += other.cells[c][r];
                }
            }
        }
    }

    private double[] column(int at) {
        if (cells[at] == null) {
            cells[at] = new double[RPM_BINS];
        }
        return cells[at];
    }

    public int kmhBins() {
        return KMH_BINS;
    }

    public int rpmBins() {
        return RPM_BINS;
    }

    /** Seconds in the cell from {@code column * KMH_STEP} km/h and {@code row * RPM_STEP} rpm on. */
    public double seconds(int column, int row) {
        return cells[column] == null ? 0 : cells[column][row];
    }
}
