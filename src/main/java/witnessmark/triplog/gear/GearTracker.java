package witnessmark.triplog.gear;

import java.util.Arrays;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/**
 * The most likely course of gears through a block of rows (Viterbi's method: hidden gear, seen ratio with noise, a price
 * for each change). A row far off every gear counts as out of gear. Changes cost the same wherever they lead, so the way
 * back needs only one bit per gear and row: stayed, or came from the best.
 */
final class GearTracker {
    static final double SLOWEST_KMH = 2;
    private static final double SURE_KMH = 10;
    private static final double LEAST_RPM = 300;
    /** Scatter that no log is without: driveline wind-up, rounding, ratios given to three places. */
    private static final double LEAST_SCATTER = 0.01;
    /** Engine and road speed come from different controllers; a tenth of a second apart is usual. */
    private static final double SKEW_SECONDS = 0.1;

    private static final double WIDEST_SCATTER = 0.2;
    /** Density, per unit of the ratio's logarithm, of rows out of gear, and of odd rows in gear. */
    private static final double OUT_OF_GEAR = Math.log(1 / 3.0);

    private static final double ODD_ROW = Math.log(0.02 / 3.0);
    /** So that rounding decides nothing where a row is just odd. */
    private static final double SAFELY = 1 + 1e-9;
    /** At idle and rolling, the engine is more likely held there by its governor than by a gear. */
    private static final double IDLING = 3.5;

    private static final double BELL = 0.5 * Math.log(2 * Math.PI);
    /** Neighbouring rows are not independent. */
    private static final double TRUST = 0.7;

    private static final double SECONDS_PER_CHANGE = 6;
    private static final double FAR = 1e9;
    private static final double SETTLED_FIT = 2.5;

    /** Odd, its bits well mixed: 2^64 over the golden ratio. */
    private static final long SCATTERING = 0x9E3779B97F4A7C15L;

    private final GearTable table;
    private final int gears;
    /** For each gear, output shaft speed over engine speed: by road speed, and by the shaft's own, which needs no tyre. */
    private final double[] byRoad;

    private final double[] byShaft;
    private final double[] score;
    /** The state with the highest score, the first of them where several have it. */
    private int top;

    private double secondScore;
    /** What the row at hand says for each state. */
    private final double[] weight;

    private final long[] stayed;
    private final byte[] best;
    private final byte[] states;
    private final double[] scatter;

    private double priceSeconds = -1;
    private double price = 7;
    /** Prices of the few distances in time that the rows of a log have, each in the place that its bits give. */
    private final double[] knownSeconds = new double[16];

    private final double[] knownPrice = new double[16];

    GearTracker(GearTable table, int capacity) {
        this.table = table;
        this.gears = table.gears().size();
        this.byRoad = new double[gears];
        this.byShaft = new double[gears];
        this.score = new double[gears + 1];
        this.weight = new double[gears + 1];
        this.stayed = new long[capacity];
        this.best = new byte[capacity];
        this.states = new byte[capacity];
        this.scatter = new double[capacity];
        Arrays.fill(knownSeconds, Double.NaN);
    }

    /** Index of the state "out of gear". */
    int outOfGear() {
        return gears;
    }

    /** State of a row after {@link #track}: a gear's index or {@link #outOfGear}. */
    int state(int row) {
        return states[row];
    }

    /** Relative scatter of the ratio at each row, NaN where the ratio says nothing. */
    double[] scatter() {
        return scatter;
    }

    /**
     * Finds the states of all rows of the block.
     *
     * @param first state before the first row, or -1 if nothing is known of it
     */
    void track(RowBlock block, NoiseLevel noise, double factor, int first) {
        for (int g = 0; g < gears; g++) {
            // Road speed has no sign: reverse is never told from the ratio, only from the lever or the gear signal.
            boolean reverse = table.gear(g).isReverse();
            byRoad[g] = reverse ? FAR : 1 / (table.gear(g).ratio() * factor);
            byShaft[g] = reverse ? FAR : 1 / table.gear(g).ratio();
        }
        forward(block, noise, first);
        backward(block.size());
    }

    private void forward(RowBlock block, NoiseLevel noise, int first) {
        double[] engine = block.column(Signal.ENGINE_SPEED);
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] output = block.column(Signal.OUTPUT_SHAFT_SPEED);
        double[] pedal = block.column(Signal.ACCELERATOR);
        double perKmh = table.outputRpmPerKmh();
        Arrays.fill(score, first < 0 ? 0 : -8);
        lead(Math.max(first, 0));
        int settled = -1;
        double silentPrice = -1;
        double lastSpread = LEAST_SCATTER;
        for (int row = 0; row < block.size(); row++) {
            int i = settled < 0 ? row : staysUntil(block, row, settled);
            if (i > row) {
                Arrays.fill(stayed, row, i, 1L << settled);
                Arrays.fill(best, row, i, (byte) settled);
                Arrays.fill(scatter, row, i, lastSpread);
                row = i;
            }
            if (i == block.size()) {
                return;
            }
            double seconds = block.secondsBefore(i);
            boolean hasShaft = output[i] > 0;
            double[] gearIn = hasShaft ? byShaft : byRoad;
            double ratio = engine[i] / (hasShaft ? output[i] : road[i] * perKmh);
            double spread = spread(block, i, hasShaft, noise);
            boolean telling = spread < WIDEST_SCATTER && engine[i] >= LEAST_RPM;
            lastSpread = telling ? (float) spread : lastSpread;
            scatter[i] = telling ? lastSpread : Double.NaN;
            if (settled >= 0 && seconds > 0 && (!telling || fits(ratio * gearIn[settled], spread))) {
                stayed[i] = 1L << settled;
                best[i] = (byte) settled;
                continue;
            }
            if (settled >= 0) {
                silentPrice = -1;
                Arrays.fill(score, -2 * price(Math.max(seconds, 0.1)));
                lead(settled);
            }
            boolean idling = engine[i] < 1.15 * table.idleRpm() && road[i] > 15 && !(pedal[i] > 15);
            if (!telling && silentPrice >= 0 && seconds > 0 && price(seconds) >= silentPrice) {
                // Rows that say nothing bring all states within the price of a change; a further one moves none.
                stayed[i] = -1L;
                continue;
            }
            if (telling) {
                weigh(ratio, spread, gearIn, TRUST * (OUT_OF_GEAR + (idling ? IDLING : 0)));
            } else {
                Arrays.fill(weight, 0);
            }
            step(i, seconds);
            silentPrice = telling ? -1 : seconds > 0 ? price(seconds) : 0;
            settled = telling ? settled() : -1;
        }
    }

    /** Past the rows that are on the settled gear even by the narrowest measure: nearly all rows of a drive. */
    private int staysUntil(RowBlock block, int from, int gear) {
        double[] engine = block.column(Signal.ENGINE_SPEED);
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] output = block.column(Signal.OUTPUT_SHAFT_SPEED);
        double[] seconds = block.secondsBefore();
        double perKmh = table.outputRpmPerKmh();
        double inByRoad = byRoad[gear];
        double inByShaft = byShaft[gear];
        int i = from;
        for (; i < block.size(); i++) {
            boolean shaft = output[i] > 0;
            double ratio = engine[i] / (shaft ? output[i] : road[i] * perKmh);
            double fit = ratio * (shaft ? inByShaft : inByRoad);
            boolean stays = seconds[i] > 0 && engine[i] >= LEAST_RPM && road[i] > SURE_KMH && fits(fit, LEAST_SCATTER);
            if (!stays) {
                break;
            }
        }
        return i;
    }

    /** Whether a ratio, as a share of the settled gear's, is so near that nothing else need be thought of. */
    private static boolean fits(double share, double spread) {
        return Math.abs(share - 1) < SETTLED_FIT * spread;
    }

    private double spread(RowBlock block, int i, boolean byShaft, NoiseLevel noise) {
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] seconds = block.secondsBefore();
        double speed = byShaft ? block.get(Signal.OUTPUT_SHAFT_SPEED, i) / table.outputRpmPerKmh() : road[i];
        if (!(speed >= SLOWEST_KMH)) {
            return Double.NaN;
        }
        int back = i;
        double span = 0;
        while (back > 0 && span < 0.45 && seconds[back] > 0) {
            span += seconds[back--];
        }
        double change = span > 0 ? Math.abs(road[i] - road[back]) / span : 0;
        double skew = Double.isNaN(change) ? 0 : Math.min(change, 12) * SKEW_SECONDS / speed;
        double roadPart = (byShaft ? 0.1 : noise.roadKmh()) / speed;
        double enginePart = noise.engineRpm() / Math.max(block.get(Signal.ENGINE_SPEED, i), LEAST_RPM);
        return Math.sqrt(LEAST_SCATTER * LEAST_SCATTER + roadPart * roadPart + enginePart * enginePart + skew * skew);
    }

    private double price(double seconds) {
        if (seconds != priceSeconds) {
            priceSeconds = seconds;
            int place = (int) (Double.doubleToRawLongBits(seconds) * SCATTERING >>> 60);
            if (knownSeconds[place] != seconds) {
                double change = -Math.expm1(-seconds / SECONDS_PER_CHANGE);
                knownSeconds[place] = seconds;
                knownPrice[place] = -Math.log(change / (gears + 1));
            }
            price = knownPrice[place];
        }
        return price;
    }

    /** Puts a state ahead of all others, or level with them. */
    private void lead(int state) {
        score[state] = 0;
        top = state;
    }

    /** What a row with this ratio says for each gear; most are so far off that it is odd for them. */
    private void weigh(double ratio, double spread, double[] gearIn, double outOfGear) {
        double[] weighed = weight;
        double peak = -Math.log(spread) - BELL;
        double odd = spread * Math.sqrt(2 * (peak - ODD_ROW)) * SAFELY;
        Arrays.fill(weighed, TRUST * ODD_ROW);
        weighed[gears] = outOfGear;
        for (int s = 0; s < gearIn.length; s++) {
            double away = ratio * gearIn[s] - 1;
            if (away < odd && away > -odd) {
                double z = away / spread;
                double bell = peak - 0.5 * z * z;
                weighed[s] = TRUST * (bell > ODD_ROW ? bell : ODD_ROW);
            }
        }
    }

    private void step(int i, double seconds) {
        double[] scores = score;
        double[] weighed = weight;
        double highest = scores[top];
        double fromBest = seconds <= 0 ? highest : highest - price(seconds);
        double lead = Double.NEGATIVE_INFINITY;
        double second = Double.NEGATIVE_INFINITY;
        int first = 0;
        long mask = 0;
        for (int s = 0; s < scores.length; s++) {
            double own = scores[s];
            if (own >= fromBest) {
                mask |= 1L << s;
            } else {
                own = fromBest;
            }
            own = own + weighed[s] - highest;
            scores[s] = own;
            if (own > lead) {
                second = lead;
                lead = own;
                first = s;
            } else if (own > second) {
                second = own;
            }
        }
        stayed[i] = mask;
        best[i] = (byte) top;
        top = first;
        secondScore = second;
    }

    /** The gear that leads all others by so much that each of them would now come from it; -1 if none does. */
    private int settled() {
        return top < gears && score[top] - secondScore >= price + 3 ? top : -1;
    }

    private void backward(int size) {
        int state = top;
        for (int i = size - 1; i >= 0; i--) {
            states[i] = (byte) state;
            if ((stayed[i] >>> state & 1) == 0) {
                state = best[i];
            }
        }
    }
}
