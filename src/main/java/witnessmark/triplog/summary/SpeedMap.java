package witnessmark.triplog.summary;

/** Seconds spent at each road speed and engine speed: on it each gear is a ray from the corner. */
public final class SpeedMap {
    public static final double KMH_STEP = 2;
    public static final double RPM_STEP = 50;
    private static final int KMH_BINS = 80;
    private static final int RPM_BINS = 70;

    /** A column that was never driven in stays empty and takes no room. */
    private final double[][] seconds = new double[KMH_BINS][];

    void add(double kmh, double rpm, double lasting) {
        if (kmh >= 0 && rpm >= 0) {
            int column = Math.min(KMH_BINS - 1, (int) (kmh * (1 / KMH_STEP)));
            int row = Math.min(RPM_BINS - 1, (int) (rpm * (1 / RPM_STEP)));
            column(column)[row] += lasting;
        }
    }

    void add(SpeedMap other) {
        for (int c = 0; c < KMH_BINS; c++) {
            if (other.seconds[c] != null) {
                for (int r = 0; r < RPM_BINS; r++) {
                    column(c)[r] += other.seconds[c][r];
                }
            }
        }
    }

    private double[] column(int at) {
        if (seconds[at] == null) {
            seconds[at] = new double[RPM_BINS];
        }
        return seconds[at];
    }

    public int kmhBins() {
        return KMH_BINS;
    }

    public int rpmBins() {
        return RPM_BINS;
    }

    /** Seconds in the cell from {@code column * KMH_STEP} km/h and {@code row * RPM_STEP} rpm on. */
    public double seconds(int column, int row) {
        return seconds[column] == null ? 0 : seconds[column][row];
    }
}
