package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.InHand;

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

    void add(long micros, double seconds, double kmh, double rpm, int inHand) {
        Sum sum = current;
        if (sum == null || sum.seconds >= binSeconds) {
            if (sums.size() == MOST_BINS) {
                joinNeighbours();
            }
            sum = new Sum(micros, codes);
            sums.add(sum);
            current = sum;
        }
        sum.seconds += seconds;
        sum.inHand[inHand + OTHER_CODES] += (float) seconds;
        if (kmh >= 0) {
            sum.kmhSeconds += kmh * seconds;
            sum.highestKmh = Math.max(sum.highestKmh, kmh);
        }
        if (rpm >= 0) {
            sum.rpmSeconds += rpm * seconds;
            sum.rpmKnownSeconds += seconds;
            sum.highestRpm = Math.max(sum.highestRpm, rpm);
        }
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
