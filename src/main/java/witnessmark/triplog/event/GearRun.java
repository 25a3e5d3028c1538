package witnessmark.triplog.event;

import witnessmark.triplog.gear.GearTable;

/** A stretch of rows in one gear. It is settled once its last moments hover about the gear instead of sweeping past. */
final class GearRun {
    private static final int RING = 16;
    private static final double SETTLE_SECONDS = 0.6;
    private static final double LEAST_SWEEP = 0.025;
    /** Neighbouring rows are not independent; half a second of rows counts as one opinion at most twice. */
    private static final double OPINIONS_PER_ROW = 0.4;

    final int gear;
    final long startMicros;
    final long firstLine;
    final double startKmh;
    final double startRpm;
    long endMicros;
    long lastLine;
    double endKmh;
    double endRpm;
    double highestRpm;
    private int rows;
    private double odds;
    private boolean settled;
    private final double[] residual = new double[RING];
    private final double[] spread = new double[RING];
    private final long[] time = new long[RING];

    GearRun(Moment m) {
        gear = m.inHand();
        startMicros = m.micros();
        firstLine = m.line();
        startKmh = m.kmh();
        startRpm = m.rpm();
    }

    /** Takes a row; true if the run is settled by it. */
    boolean take(Moment m, GearTable table, double perKmh) {
        endMicros = m.micros();
        lastLine = m.line();
        endKmh = m.kmh();
        endRpm = m.rpm();
        highestRpm = Math.max(highestRpm, m.rpm());
        double ratio = m.rpm() / m.outputRpm(perKmh);
        double away = ratio / table.gear(gear).ratio() - 1;
        if (Double.isNaN(m.scatter()) || Double.isNaN(away)) {
            return false;
        }
        int at = rows++ % RING;
        residual[at] = away;
        spread[at] = m.scatter();
        time[at] = m.micros();
        if (rows < 200) {
            odds += oddsOverNeighbours(table, ratio, m.scatter());
        }
        if (!settled && hovers()) {
            settled = true;
            return true;
        }
        return false;
    }

    private double oddsOverNeighbours(GearTable table, double ratio, double scatter) {
        double own = square(ratio, gear, table, scatter);
        double rival = 36;
        if (table.shorter(gear) >= 0) {
            rival = Math.min(rival, square(ratio, table.shorter(gear), table, scatter));
        }
        if (table.taller(gear) >= 0) {
            rival = Math.min(rival, square(ratio, table.taller(gear), table, scatter));
        }
        return 0.5 * (rival - own);
    }

    private static double square(double ratio, int gear, GearTable table, double scatter) {
        double z = (ratio / table.gear(gear).ratio() - 1) / scatter;
        return z * z;
    }

    private boolean hovers() {
        int held = Math.min(rows, RING);
        int newest = (rows - 1) % RING;
        int back = 1;
        while (back < held && (time[newest] - time[(newest - back + RING) % RING]) / 1e6 < SETTLE_SECONDS) {
            back++;
        }
        if (back >= held || held < 2) {
            return false;
        }
        int count = back + 1;
        double early = 0;
        double late = 0;
        int half = count / 2;
        for (int k = 0; k < half; k++) {
            late += residual[(newest - k + RING) % RING] / half;
            early += residual[(newest - (count - 1 - k) + RING) % RING] / half;
        }
        double tolerance = Math.max(LEAST_SWEEP, 2.2 * spread[newest] * Math.sqrt(2.0 / half));
        double mean = (early + late) / 2;
        return Math.abs(early - late) < tolerance && Math.abs(mean) < Math.max(0.03, 1.5 * spread[newest]);
    }

    boolean isSettled() {
        return settled;
    }

    double seconds() {
        return (endMicros - startMicros) / 1e6;
    }

    /** How sure it is that this gear, and not its neighbour, was in hand. */
    double confidence() {
        return 1 / (1 + Math.exp(-Math.min(30, OPINIONS_PER_ROW * odds)));
    }
}
