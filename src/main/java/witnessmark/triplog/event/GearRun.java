package witnessmark.triplog.event;

import witnessmark.triplog.gear.GearTable;

/** A stretch of rows in one gear. It is settled once its last moments hover about the gear instead of sweeping past. */
final class GearRun {
    private static final int RING = 24;
    /** After so many rows nothing more is to be learned of which gear it is. */
    private static final int ENOUGH_ROWS = 200;

    private static final double SETTLE_SECONDS = 0.6;
    private static final double LONG_LOOK_SECONDS = 1.4;
    private static final double LONGEST_LOOK_SECONDS = 1.5;
    /** Road speed has changed when its scatter is this many times that of noise alone. */
    private static final double CHANGED = 2.5;
    /** Squares of odd rows are cut here, so that one of them does not outweigh all others. */
    private static final double FARTHEST = 36;

    private static final double SLOW_KMH = 28;
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
    private final double[] road = new double[RING];
    private final double[] engine = new double[RING];
    private final double[] spread = new double[RING];
    private final long[] time = new long[RING];

    GearRun(Moment m) {
        gear = m.inHand();
        startMicros = m.micros();
        firstLine = m.line();
        startKmh = m.kmh();
        startRpm = m.rpm();
    }

    /** Moves the end of the run to the row. */
    void reach(Moment m) {
        endMicros = m.micros();
        lastLine = m.line();
        endKmh = m.kmh();
        endRpm = m.rpm();
    }

    /** Takes a row; true if the run is settled by it. */
    boolean take(Moment m, GearTable table, double perKmh) {
        reach(m);
        highestRpm = m.rpm() > highestRpm ? m.rpm() : highestRpm;
        if (settled && rows >= ENOUGH_ROWS) {
            return false;
        }
        double ratio = m.rpm() / m.outputRpm(perKmh);
        double away = ratio / table.gear(gear).ratio() - 1;
        if (Double.isNaN(m.scatter()) || Double.isNaN(away)) {
            return false;
        }
        int at = rows++ % RING;
        residual[at] = away;
        road[at] = m.outputRpm(perKmh) / perKmh;
        engine[at] = m.rpm();
        spread[at] = m.scatter();
        time[at] = m.micros();
        if (rows < ENOUGH_ROWS) {
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
        double rival = FARTHEST;
        if (table.shorter(gear) >= 0) {
            rival = Math.min(rival, square(ratio, table.shorter(gear), table, scatter));
        }
        if (table.taller(gear) >= 0) {
            rival = Math.min(rival, square(ratio, table.taller(gear), table, scatter));
        }
        return 0.5 * (rival - Math.min(own, FARTHEST));
    }

    private static double square(double ratio, int gear, GearTable table, double scatter) {
        double z = (ratio / table.gear(gear).ratio() - 1) / scatter;
        return z * z;
    }

    /**
     * Whether the ratio hovers about the gear: engine and road speed of the last rows rise and fall together. A clutch
     * that slips at a start sweeps the ratio past the gears with the engine nearly steady; at low speed, where that
     * happens, a verdict waits until the road speed has changed enough to tell, or a second and a half have passed.
     */
    private boolean hovers() {
        int newest = (rows - 1) % RING;
        int held = Math.min(rows, RING);
        int count = 1;
        while (count < held && age(newest, count - 1) < LONGEST_LOOK_SECONDS) {
            count++;
        }
        double span = age(newest, count - 1);
        if (count < 2 || span < SETTLE_SECONDS) {
            return false;
        }
        double meanRoad = 0;
        double meanEngine = 0;
        double meanAway = 0;
        for (int k = 0; k < count; k++) {
            int at = (newest - k + RING) % RING;
            meanRoad += road[at] / count;
            meanEngine += engine[at] / count;
            meanAway += residual[at] / count;
        }
        double roadSquares = 0;
        double together = 0;
        for (int k = 0; k < count; k++) {
            int at = (newest - k + RING) % RING;
            double x = road[at] / meanRoad - 1;
            roadSquares += x * x;
            together += x * (engine[at] / meanEngine - 1);
        }
        boolean changed = roadSquares / count > CHANGED * spread[newest] * spread[newest];
        boolean near = Math.abs(meanAway) < Math.max(0.03, 1.5 * spread[newest]);
        if (changed) {
            return near && together > 0.5 * roadSquares;
        }
        return near && (meanRoad > SLOW_KMH || span >= LONG_LOOK_SECONDS || count < 4);
    }

    private double age(int newest, int back) {
        return (time[newest] - time[(newest - back + RING) % RING]) / 1e6;
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
