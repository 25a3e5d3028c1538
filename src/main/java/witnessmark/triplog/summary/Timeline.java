package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/**
 * The drive along its covered time in a bounded number of bins; when they run out, neighbours are joined and each bin
 * stands for twice the time. Gaps of the record take no room.
 */
public final class Timeline {
    private static final int MOST_BINS = 720;
    private static final int OTHER_CODES = -InHand.CANNOT_TELL;

    /**
     * One bin.
     *
     * @param startMicros time of its first row
     * @param seconds covered
     * @param inHand what was longest in hand, a gear's index or a code of {@link InHand}
     */
    public record Bin(
            long startMicros,
            double seconds,
            double meanKmh,
            double highestKmh,
            double meanRpm,
            double highestRpm,
            int inHand) {}

    private static final class Sum {
        private long startMicros;
        private double seconds;
        private double kmhSeconds;
        private double highestKmh;
        private double rpmSeconds;
        private double rpmKnownSeconds;
        private double highestRpm;
        private final float[] inHand;

        Sum(long startMicros, int codes) {
            this.startMicros = startMicros;
            this.inHand = new float[codes];
        }

        /** Takes rows until the bin is full; one past the last one taken. */
        int take(RowBlock block, int[] inHandCodes, int from, int to, double full) {
            double[] lasting = block.secondsBefore();
            double[] road = block.column(Signal.ROAD_SPEED);
            double[] engine = block.column(Signal.ENGINE_SPEED);
            double covered = seconds;
            double km = kmhSeconds;
            double turns = rpmSeconds;
            double known = rpmKnownSeconds;
            double kmh = highestKmh;
            double rpm = highestRpm;
            int code = inHandCodes[from];
            float inThisHand = inHand[code + OTHER_CODES];
            int i = from;
            do {
                double row = SumUp.lasting(lasting[i]);
                covered += row;
                if (inHandCodes[i] != code) {
                    inHand[code + OTHER_CODES] = inThisHand;
                    code = inHandCodes[i];
                    inThisHand = inHand[code + OTHER_CODES];
                }
                inThisHand += (float) row;
                if (road[i] >= 0) {
                    km += road[i] * row;
                    kmh = road[i] > kmh ? road[i] : kmh;
                }
                if (engine[i] >= 0) {
                    turns += engine[i] * row;
                    known += row;
                    rpm = engine[i] > rpm ? engine[i] : rpm;
                }
                i++;
            } while (i < to && covered < full);
            inHand[code + OTHER_CODES] = inThisHand;
            seconds = covered;
            kmhSeconds = km;
            rpmSeconds = turns;
            rpmKnownSeconds = known;
            highestKmh = kmh;
            highestRpm = rpm;
            return i;
        }

        void join(Sum next) {
            seconds += next.seconds;
            kmhSeconds += next.kmhSeconds;
            highestKmh = Math.max(highestKmh, next.highestKmh);
            rpmSeconds += next.rpmSeconds;
            rpmKnownSeconds += next.rpmKnownSeconds;
            highestRpm = Math.max(highestRpm, next.highestRpm);
            for (int i = 0; i < inHand.length; i++) {
                inHand[i] += next.inHand[i];
            }
        }

        Bin bin() {
            int most = 0;
            for (int i = 1; i < inHand.length; i++) {
                most = inHand[i] > inHand[most] ? i : most;
            }
            return new Bin(
                    startMicros,
                    seconds,
                    seconds > 0 ? kmhSeconds / seconds : 0,
                    highestKmh,
                    rpmKnownSeconds > 0 ? rpmSeconds / rpmKnownSeconds : 0,
                    highestRpm,
                    most - OTHER_CODES);
        }
    }

    private final int codes;
    private final List<Sum> sums = new ArrayList<>();
    private double binSeconds = 1;
    /** The last of the sums. */
    private @Nullable Sum current;

    Timeline(int gears) {
        this.codes = gears + OTHER_CODES;
    }

    void add(RowBlock block, int[] inHand, int from, int to) {
        int row = from;
        while (row < to) {
            Sum sum = current;
            if (sum == null || sum.seconds >= binSeconds) {
                sum = begin(block.timeMicros(row));
            }
            row = sum.take(block, inHand, row, to, binSeconds);
        }
    }

    private Sum begin(long micros) {
        if (sums.size() == MOST_BINS) {
            joinNeighbours();
        }
        Sum sum = new Sum(micros, codes);
        sums.add(sum);
        current = sum;
        return sum;
    }

    private void joinNeighbours() {
        List<Sum> joined = new ArrayList<>();
        for (int i = 0; i + 1 < sums.size(); i += 2) {
            sums.get(i).join(sums.get(i + 1));
            joined.add(sums.get(i));
        }
        sums.clear();
        sums.addAll(joined);
        binSeconds *= 2;
    }

    public List<Bin> bins() {
        return sums.stream().map(Sum::bin).toList();
    }
}
