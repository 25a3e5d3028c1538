package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import witnessmark.knowledge.KnowledgeBase;

/** How much each finding on record moves each cause: the change of its log-odds when that finding alone is left out. */
final class Weights {
    private static final double WORTH_SHOWING_DECIBANS = 0.2;
    private static final double SMALLEST = 1e-15;
    private static final double MOST_DECIBANS = 150;

    private final NetworkReading reading;
    private final KnowledgeBase knowledge;
    private final Map<String, double[]> decibansByFinding = new LinkedHashMap<>();

    Weights(NetworkReading reading, KnowledgeBase knowledge) {
        this.reading = reading;
        this.knowledge = knowledge;
    }

    /** The findings that raise the cause, strongest first. */
    List<RankedCause.Weight> raising(String cause) {
        return sorted(cause, true);
    }

    /** The findings that lower the cause, strongest first. */
    List<RankedCause.Weight> lowering(String cause) {
        return sorted(cause, false);
    }

    private List<RankedCause.Weight> sorted(String cause, boolean raising) {
        int index = reading.network().cause(cause);
        List<RankedCause.Weight> weights = new ArrayList<>();
        byFinding().forEach((finding, decibans) -> {
            double weight = decibans[index];
            if (Math.abs(weight) >= WORTH_SHOWING_DECIBANS && weight > 0 == raising) {
                weights.add(new RankedCause.Weight(
                        finding,
                        knowledge.findings().get(finding).title(),
                        reading.taken().get(finding).state(),
                        weight));
            }
        });
        weights.sort(Comparator.comparingDouble((RankedCause.Weight w) -> -Math.abs(w.decibans()))
                .thenComparing(RankedCause.Weight::finding));
        return List.copyOf(weights);
    }

    /** By finding, worked out when first asked for. */
    private Map<String, double[]> byFinding() {
        if (decibansByFinding.isEmpty()) {
            Map<String, double[]> plain = plainDecibans();
            reading.taken()
                    .keySet()
                    .forEach(finding -> decibansByFinding.put(
                            finding,
                            reading.changesOdds(finding) || !plain.containsKey(finding)
                                    ? decibans(finding)
                                    : plain.get(finding)));
        }
        return decibansByFinding;
    }

    /** By cause index. A finding that also set off a rule is left out together with what the rule changed. */
    private double[] decibans(String finding) {
        double[] without = reading.without(finding);
        double[] decibans = new double[without.length];
        for (int c = 0; c < without.length; c++) {
            double with = reading.probability(c);
            decibans[c] = with == without[c] ? 0 : change(with, without[c]);
        }
        return decibans;
    }

    /** The change of the log-odds from one chance to another, in decibans. */
    static double change(double with, double without) {
        return 10 * (Math.log10(odds(with)) - Math.log10(odds(without)));
    }

    /** By cause index, for every finding that set off no rule, all from one reading. */
    private Map<String, double[]> plainDecibans() {
        int[] causes = IntStream.range(0, reading.network().causes().size()).toArray();
        var weights = reading.inference().weights(reading.evidence(), causes);
        Map<String, double[]> decibans = new HashMap<>();
        for (int f = 0; f < weights.findings().length; f++) {
            decibans.put(
                    reading.network().findings().get(weights.findings()[f]).id(),
                    Arrays.stream(weights.decibans()[f])
                            .map(d -> Math.max(-MOST_DECIBANS, Math.min(MOST_DECIBANS, d)))
                            .toArray());
        }
        return decibans;
    }

    private static double odds(double probability) {
        return Thresholds.odds(Math.min(1 - SMALLEST, Math.max(SMALLEST, probability)));
    }
}
