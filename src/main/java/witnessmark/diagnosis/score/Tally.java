package witnessmark.diagnosis.score;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import witnessmark.diagnosis.RankedCause;

/** The figures over a set of scored cases. */
public record Tally(List<Scored> cases) {
    private static final int BINS = 10;

    public Tally {
        cases = List.copyOf(cases);
    }

    /** The cases of each expected verdict. */
    public Map<String, Tally> byVerdict() {
        Map<String, List<Scored>> sorted = new TreeMap<>();
        cases.forEach(c -> sorted.computeIfAbsent(c.expected().verdict(), key -> new ArrayList<>())
                .add(c));
        Map<String, Tally> tallies = new TreeMap<>();
        sorted.forEach((verdict, list) -> tallies.put(verdict, new Tally(list)));
        return tallies;
    }

    public long firstRight() {
        return cases.stream().filter(Scored::firstRight).count();
    }

    public long withinThree() {
        return cases.stream().filter(Scored::withinThree).count();
    }

    public long verdictRight() {
        return cases.stream().filter(Scored::verdictRight).count();
    }

    /** How often each answer was given. */
    public Map<Scored.Answer, Long> answers() {
        return cases.stream()
                .collect(Collectors.groupingBy(
                        Scored::answer, () -> new EnumMap<>(Scored.Answer.class), Collectors.counting()));
    }

    public long wrongBlame() {
        return cases.stream().filter(Scored::wrongBlame).count();
    }

    /**
     * Brier score of the leading cause: mean of (probability - right)^2 over the cases whose true cause is named
     * (Brier 1950). Empty if there is none.
     */
    public OptionalDouble brier() {
        return cases.stream()
                .filter(c -> !c.expected().first().isEmpty()
                        && !c.judgement().causes().isEmpty())
                .mapToDouble(c -> {
                    RankedCause lead = c.judgement().causes().get(0);
                    return squaredMiss(lead.probability(), c.isTrue(lead.id()));
                })
                .average();
    }

    static double squaredMiss(double probability, boolean right) {
        double miss = probability - (right ? 1 : 0);
        return miss * miss;
    }

    /** Every cause in question of every case with a named truth, binned by its probability. */
    public List<Bin> calibration() {
        double[] sum = new double[BINS];
        int[] count = new int[BINS];
        int[] right = new int[BINS];
        for (Scored scored : cases) {
            if (scored.expected().first().isEmpty()) {
                continue;
            }
            for (RankedCause cause : scored.judgement().causes()) {
                int bin = Math.min(BINS - 1, (int) (cause.probability() * BINS));
                sum[bin] += cause.probability();
                count[bin]++;
                right[bin] += scored.isTrue(cause.id()) ? 1 : 0;
            }
        }
        List<Bin> bins = new ArrayList<>();
        for (int b = 0; b < BINS; b++) {
            if (count[b] > 0) {
                bins.add(new Bin(b / (double) BINS, (b + 1) / (double) BINS, count[b], sum[b] / count[b], right[b]));
            }
        }
        return bins;
    }

    /**
     * The forecasts between two probabilities.
     *
     * @param mean their mean probability
     * @param right how many came true
     */
    public record Bin(double from, double to, int count, double mean, int right) {}
}
