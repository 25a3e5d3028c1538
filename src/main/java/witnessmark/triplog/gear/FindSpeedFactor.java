package witnessmark.triplog.gear;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** Gathers the ratios of steady driving over the whole log and finds the speed factor that explains them best. */
final class FindSpeedFactor {
    private static final double BIN = 0.002;
    private static final double LOWEST_LOG = Math.log(0.2);
    private static final int BINS = 2800;
    /** Tyre wear, size and entry errors together rarely exceed a tenth (common practice, no source). */
    private static final double WIDEST = 0.10;

    /** Beyond that lie a wrong axle in the profile, or miles taken for kilometres. */
    private static final double FARTHEST = 1.7;

    private static final int ENOUGH_FOR_FAR = 600;
    /** With the right factor nearly all steady driving lies on a gear. */
    private static final double FITS = 0.85;

    private static final double FAR_BETTER = 0.12;
    private static final double STEP = 0.001;
    private static final double PRIOR_WIDTH = 0.05;
    private static final double KERNEL = 0.006;
    /** With so many rows, one in seven is enough. */
    private static final long PLENTY = 20_000;
    /** Looked for again when there is this much more to go by. */
    private static final double GROWN = 1.1;

    private static final double ON_GEAR = 0.02;
    private static final double STEADY_PER_SECOND = 0.06;

    private final GearTable table;
    private final long[] bins = new long[BINS];
    /** By factor in steps. */
    private final Map<Integer, GearComb> combs = new HashMap<>();

    private long rows;
    private SpeedFactor last = SpeedFactor.NOMINAL;

    FindSpeedFactor(GearTable table) {
        this.table = table;
    }

    /** Adds the steady rows of the block from {@code from} on: rolling above walking pace, ratio hardly changing. */
    void add(RowBlock block, int from) {
        double[] engine = block.column(Signal.ENGINE_SPEED);
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] clutch = block.column(Signal.CLUTCH);
        double perKmh = table.outputRpmPerKmh();
        double pulling = 0.9 * table.lowestPullingRpm();
        boolean stuck = isMostlyPressed(road, clutch, block.size());
        int stride = rows > PLENTY ? 7 : 1;
        for (int i = Math.max(1, from); i < block.size(); i += stride) {
            double seconds = block.secondsBefore(i);
            if (!(road[i] > 12) || !(engine[i] > pulling) || seconds <= 0 || !stuck && clutch[i] > 0.5) {
                continue;
            }
            double ratio = engine[i] / (road[i] * perKmh);
            double before = engine[i - 1] / (road[i - 1] * perKmh);
            double drift = Math.abs(ratio / before - 1);
            if (drift < STEADY_PER_SECOND * Math.max(seconds, 0.3) + 0.01) {
                int bin = (int) ((Math.log(ratio) - LOWEST_LOG) / BIN);
                if (bin >= 0 && bin < BINS) {
                    bins[bin]++;
                    rows++;
                }
            }
        }
    }

    /** Nobody drives so; the switch is stuck or wired the wrong way round. */
    private static boolean isMostlyPressed(double[] road, double[] clutch, int size) {
        int moving = 0;
        int pressed = 0;
        for (int i = 0; i < size; i++) {
            moving += road[i] > 12 ? 1 : 0;
            pressed += road[i] > 12 && clutch[i] > 0.5 ? 1 : 0;
        }
        return 2 * pressed > moving;
    }

    SpeedFactor find() {
        if (rows < SpeedFactor.ENOUGH_ROWS) {
            return SpeedFactor.NOMINAL;
        }
        if (rows < GROWN * last.rows()) {
            return last;
        }
        last = search();
        return last;
    }

    private SpeedFactor search() {
        SpeedFactor near = best(1 - WIDEST, 1 + WIDEST, PRIOR_WIDTH, 0.9);
        if (rows < ENOUGH_FOR_FAR || near.share() >= FITS) {
            return near;
        }
        SpeedFactor far = best(1 / FARTHEST, FARTHEST, Double.POSITIVE_INFINITY, 0.93);
        boolean better = far.share() >= near.share() + FAR_BETTER && Math.abs(far.factor() - near.factor()) > 0.02;
        if (!better) {
            return near;
        }
        return far.ambiguous() ? near.misfitting() : far;
    }

    /** The best factor in the bounds, and whether another one comes up to {@code rivalShare} of its score. */
    private SpeedFactor best(double low, double high, double priorWidth, double rivalShare) {
        int lowest = (int) Math.round(low / STEP);
        double[] scores = new double[(int) Math.round(high / STEP) - lowest + 1];
        int best = 0;
        for (int i = 0; i < scores.length; i++) {
            scores[i] = score(lowest + i, priorWidth);
            best = scores[i] > scores[best] ? i : best;
        }
        boolean rival = false;
        for (int i = 0; i < scores.length; i++) {
            boolean peak =
                    (i == 0 || scores[i] >= scores[i - 1]) && (i == scores.length - 1 || scores[i] >= scores[i + 1]);
            rival |= peak && Math.abs(i - best) * STEP > 0.02 && scores[i] > rivalShare * scores[best];
        }
        double factor = (lowest + best) * STEP;
        double onGear = new GearComb(table, factor, ON_GEAR, false).mass(bins);
        return new SpeedFactor(factor, rows, onGear / rows, rival, false);
    }

    private double score(int steps, double priorWidth) {
        double factor = steps * STEP;
        double away = (factor - 1) / priorWidth;
        GearComb comb = combs.computeIfAbsent(steps, s -> new GearComb(table, factor, 3 * KERNEL, true));
        return comb.mass(bins) * Math.exp(-0.5 * away * away);
    }

    /** Weighs the rows near the gears, as they lie under one factor; the same for each search, so reckoned once. */
    private static final class GearComb {
        private int[] bin = new int[64];
        private double[] weight = new double[64];
        private int size;

        /** Takes bins within {@code reach} (in the logarithm) of a gear, each once, weighed by a bell curve if asked. */
        GearComb(GearTable table, double factor, double reach, boolean bell) {
            int next = BINS;
            for (KnobGear gear : table.gears()) {
                if (gear.isReverse()) {
                    continue;
                }
                double centre = (Math.log(gear.ratio() * factor) - LOWEST_LOG) / BIN;
                int low = Math.max(0, (int) (centre - reach / BIN));
                int high = Math.min(next - 1, (int) (centre + reach / BIN));
                for (int at = high; at >= low; at--) {
                    double z = (at + 0.5 - centre) * BIN / KERNEL;
                    add(at, bell ? Math.exp(-0.5 * z * z) : 1);
                }
                next = Math.min(next, low);
            }
        }

        private void add(int at, double itsWeight) {
            if (size == bin.length) {
                bin = Arrays.copyOf(bin, 2 * size);
                weight = Arrays.copyOf(weight, 2 * size);
            }
            bin[size] = at;
            weight[size++] = itsWeight;
        }

        double mass(long[] rowsInBin) {
            double sum = 0;
            for (int i = 0; i < size; i++) {
                sum += rowsInBin[bin[i]] * weight[i];
            }
            return sum;
        }
    }
}
