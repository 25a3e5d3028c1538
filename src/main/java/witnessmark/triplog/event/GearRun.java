package witnessmark.triplog.event;

import witnessmark.triplog.gear.GearTable;

/** A stretch of rows in one gear. It is settled once its last moments hover about the gear instead of sweeping past. */
final class GearRun {
    private static final int RING = 24;
    /** After so many rows nothing more is to be learned of which gear it is. */
    private static final int ENOUGH_ROWS = 200;

    private static final double SETTLE_SECONDS = 0.6;
    private static final double LONGEST_LOOK_SECONDS = 2.3;
    /** Bias and trend per second that ratios may have in gear: tyre factor, wind-up, signals a little apart in time. */
    private static final double NEAR = 0.02;

    private static final double FREE_TREND = 0.01;
    /** As near is the mean of many rows to a gear that is in hand. */
    private static final double EXACT = 0.008;
    /** An engine speed that stays would leave the gear by more than that meanwhile; common practice, no source. */
    private static final double TELLING_CHANGE = 0.03;
    /**
     * Road speed comes filtered, so much later than engine speed: while the truck gains speed by a share a second, the ratio
     * stands off by as much times this, and drifts by the square of it.
     */
    private static final double LAG_SECONDS = 0.3;

    /** A slipping start at a gentle 0.17 m/s2 sweeps the ratio by this share a second for each km/h of road speed. */
    private static final double SLIP_SWEEP = 0.6;
    /** So few rows show no trend; a slow log has to do with them. */
    private static final int FEW_ROWS = 4;
    /** Squares of odd rows are cut here, so that one of them does not outweigh all others. */
    private static final double FARTHEST = 36;

    private static final double SLOW_KMH = 28;
    /** Neighbouring rows are not independent; half a second of rows counts as one opinion at most twice. */
    private static final double OPINIONS_PER_ROW = 0.4;

    private static final double SUREST = 30;
    /**
     * An engine out of gear that falls to idle while the truck brakes passes a gear's ratio and, once at idle, comes back to
     * it; above idle that takes about a second.
     */
    private static final double HELD_SECONDS = 1.5;

    /** Below that the engine pulls no more than it takes to turn itself. */
    private static final double OFF_PERCENT = 5;
    /**
     * With the torque off a slipping clutch takes hold at once: 1,000 Nm and more slow down an engine of some 4 kg m2 by 250
     * rpm in a tenth of a second; the rest is what signals come late. Common practice, no source.
     */
    private static final double COASTED_SECONDS = 0.4;

    private static final long NEVER = Long.MIN_VALUE;

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
    private long aboveIdleMicros;
    /** Since when the torque is off, pedal up. */
    private long offMicros = NEVER;

    private boolean coasted;
    private int rows;
    private double odds;
    private double awaySum;
    private int awayRows;
    private boolean settled;
    private final double[] residual = new double[RING];
    private final double[] road = new double[RING];
    private final double[] spread = new double[RING];
    private final long[] time = new long[RING];
    /** Seconds before the newest row, newest first. */
    private final double[] age = new double[RING];

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
        if (m.isAboveIdle()) {
            aboveIdleMicros = endMicros;
        }
    }

    /** The same over rows that were not looked at. */
    void skipTo(Moment m) {
        reach(m);
        offMicros = NEVER;
    }

    private void watchTorque(Moment m) {
        boolean off = m.load() < OFF_PERCENT && !m.isPedalPressed();
        offMicros = !off ? NEVER : offMicros == NEVER ? m.micros() : offMicros;
        coasted |= off && m.micros() - offMicros >= COASTED_SECONDS * 1e6;
    }

    /**
     * Takes a row; true if the run is settled by it.
     *
     * @param maySettle whether what the row shows can be a gear in hand, and not an engine that passes by
     */
    boolean take(Moment m, GearTable table, double perKmh, boolean maySettle) {
        reach(m);
        watchTorque(m);
        highestRpm = m.rpm() > highestRpm ? m.rpm() : highestRpm;
        double ratio = m.rpm() / m.outputRpm(perKmh);
        double away = ratio / table.gear(gear).ratio() - 1;
        if (!Double.isNaN(away)) {
            awaySum += away;
            awayRows++;
        }
        if (isSure()) {
            return false;
        }
        if (Double.isNaN(m.scatter()) || Double.isNaN(away)) {
            return false;
        }
        int at = rows++ % RING;
        residual[at] = away;
        road[at] = m.outputRpm(perKmh) / perKmh;
        spread[at] = m.scatter();
        time[at] = m.micros();
        if (rows < ENOUGH_ROWS) {
            odds += oddsOverNeighbours(table, ratio, m.scatter());
        }
        if (!settled && maySettle && hovers()) {
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
     * Whether the ratio hovers about the gear: over the last moments it has no trend in time that noise would not
     * explain. A clutch that slips at a start sweeps the ratio past the gears as road speed rises; at the low speeds
     * where that happens, a verdict waits until such a sweep would stand out from the noise.
     */
    private boolean hovers() {
        int newest = (rows - 1) % RING;
        int held = Math.min(rows, RING);
        int count = 1;
        while (count < held && (age[count] = age(newest, before(newest, count))) < LONGEST_LOOK_SECONDS) {
            count++;
        }
        if (count < 2 || age[count - 1] < SETTLE_SECONDS) {
            return false;
        }
        double meanAge = 0;
        double meanAway = 0;
        double meanRoad = 0;
        for (int k = 0; k < count; k++) {
            int at = before(newest, k);
            meanAge += age[k] / count;
            meanAway += residual[at] / count;
            meanRoad += road[at] / count;
        }
        double ageSquares = 0;
        double together = 0;
        double gained = 0;
        for (int k = 0; k < count; k++) {
            double fromMean = age[k] - meanAge;
            ageSquares += fromMean * fromMean;
            together += fromMean * residual[before(newest, k)];
            gained += fromMean * road[before(newest, k)];
        }
        double pace = Math.abs(gained / ageSquares) / meanRoad;
        double trend = Math.abs(together / ageSquares);
        double trendNoise = 2 * spread[newest] / Math.sqrt(ageSquares);
        boolean near = Math.abs(meanAway) < NEAR + LAG_SECONDS * pace + 2 * spread[newest] / Math.sqrt(count);
        boolean telling = meanRoad > SLOW_KMH || count < FEW_ROWS || trendNoise < SLIP_SWEEP / meanRoad;
        return near && telling && trend < trendNoise + FREE_TREND + LAG_SECONDS * pace * pace;
    }

    private static int before(int newest, int back) {
        return newest >= back ? newest - back : newest - back + RING;
    }

    private double age(int newest, int at) {
        return (time[newest] - time[at]) / 1e6;
    }

    /** Whether the gear was in hand for longer, with the engine above idle, than an engine out of gear could look so. */
    boolean isHeld() {
        return aboveIdleMicros - startMicros >= HELD_SECONDS * 1e6;
    }

    /** Whether further rows could tell nothing more of which gear it is. */
    boolean isSure() {
        return settled && (rows >= ENOUGH_ROWS || OPINIONS_PER_ROW * odds >= SUREST);
    }

    /**
     * Whether the engine followed the wheels in this very ratio while their speed changed: dogs do that. A slipping clutch
     * carries one torque, and lets the engine keep a speed of its own.
     */
    boolean followsTheWheels() {
        boolean exact = Math.abs(awaySum) < EXACT * awayRows;
        double road = endKmh / startKmh - 1;
        double engine = endRpm / startRpm - 1;
        return exact && Math.abs(road) > TELLING_CHANGE && Math.abs(engine - road) < 0.5 * Math.abs(road);
    }

    /** Whether the wheels turned the engine in this gear, the torque off and the pedal up: no clutch slipped then. */
    boolean coasted() {
        return coasted;
    }

    boolean isSettled() {
        return settled;
    }

    double seconds() {
        return (endMicros - startMicros) / 1e6;
    }

    /** How sure it is that this gear, and not its neighbour, was in hand. */
    double confidence() {
        return 1 / (1 + Math.exp(-Math.min(SUREST, OPINIONS_PER_ROW * odds)));
    }
}
