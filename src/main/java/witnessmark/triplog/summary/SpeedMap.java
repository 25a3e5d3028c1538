package witnessmark.triplog.summary;

/** Seconds spent at each road speed and engine speed: on it each gear is a ray from the corner. */
public final class SpeedMap {
    public static final double KMH_STEP = 2;
    public static final double RPM_STEP = 50;
    private static final int KMH_BINS = 80;
    private static final int RPM_BINS = 70;

    private final double[][] seconds = new double[KMH_BINS][RPM_BINS];

    void add(double kmh, double rpm, double lasting) {
        if (kmh >= 0 && rpm >= 0) {
            int column = Math.min(KMH_BINS - 1, (int) (kmh / KMH_STEP));
            int row = Math.min(RPM_BINS - 1, (int) (rpm / RPM_STEP));
            seconds[column][row] += lasting;
        }
    }

    void add(SpeedMap other) {
        for (int c = 0; c < KMH_BINS; c++) {
            for (int r = 0; r < RPM_BINS; r++) {
                seconds[c][r] += other.seconds[c][r];
            }
        }
    }

    public int kmhBins() {
        return KMH_BINS;
    }

    public int rpmBins() {
        return RPM_BINS;
    }

    /** Seconds in the cell from {@code column * KMH_STEP} km/h and {@code row * RPM_STEP} rpm on. */
    public double seconds(int column, int row) {
        return seconds[column][row];
    }
}
