package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.lang.management.ManagementFactory;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.bench.SparseNetwork;

/**
 * A network several times the size of the knowledge base: 600 causes, 4,000 findings, 40 of them answered, 12 present. All
 * sets of 600 causes cannot be gone through; so the answers are held against the sum over the subsets of the reports
 * (Heckerman, "A tractable inference algorithm for diagnosing multiple diseases", 1989; from memory), whose terms cancel
 * to nothing in doubles and are summed in 60 digits here.
 */
class LargeNetworkTest {
    private static final MathContext DIGITS = new MathContext(60);
    private static final Report UNSURE = new Report(0.7, 0.2);

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void posteriors_and_the_chance_of_the_evidence_are_those_of_the_sum_over_subsets(long seed) {
        var drawn = drawn(seed);
        var evidence = drawn.evidence().with(drawn.unanswered()[0], UNSURE);

        var posterior = new ExactInference(drawn.network()).posterior(evidence);

        var expected = new SumOverSubsets(drawn.network(), evidence);
        assertThat(posterior.logEvidence()).isCloseTo(Math.log(expected.chanceOfEvidence()), within(1e-9));
        double[] chances = expected.chances();
        for (int c = 0; c < chances.length; c++) {
            assertThat(posterior.of(c)).isCloseTo(chances[c], within(1e-9));
        }
    }

    /** Processor time, so that a busy machine does not count; the order of the tables is searched anew every time. */
    @Test
    void a_posterior_takes_less_than_ten_milliseconds() {
        var cases =
                IntStream.rangeClosed(1, 60).mapToObj(LargeNetworkTest::drawn).toList();
        cases.forEach(LargeNetworkTest::nanoseconds);

        long median = cases.stream()
                .mapToLong(LargeNetworkTest::nanoseconds)
                .sorted()
                .skip(cases.size() / 2)
                .findFirst()
                .getAsLong();

        assertThat(median).isLessThan(10_000_000);
    }

    private static SparseNetwork drawn(long seed) {
        return SparseNetwork.of(600, 4_000, 20, 40, 12, seed);
    }

    private static long nanoseconds(SparseNetwork drawn) {
        var threads = ManagementFactory.getThreadMXBean();
        long start = threads.getCurrentThreadCpuTime();
        new ExactInference(drawn.network()).posterior(drawn.evidence());
        return threads.getCurrentThreadCpuTime() - start;
    }

    /**
     * The chance of a report is {@code ifPresent + (ifAbsent - ifPresent) * P(finding absent)}. Multiplied out over all
     * reports, each term is a product over the causes by themselves. A report of absence has one term only, so a cause that
     * is linked to no other report is a factor of all terms.
     */
    private static final class SumOverSubsets {
        private final Network network;
        private final BigDecimal[] absent;
        private final BigDecimal[] present;
        private final BigDecimal[] sums;
        private final int[] shared;
        private BigDecimal total = BigDecimal.ZERO;

        SumOverSubsets(Network network, GivenEvidence evidence) {
            this.network = network;
            present = IntStream.range(0, network.causes())
                    .mapToObj(c -> new BigDecimal(network.prior(c)))
                    .toArray(BigDecimal[]::new);
            absent = Arrays.stream(present).map(BigDecimal.ONE::subtract).toArray(BigDecimal[]::new);
            sums = new BigDecimal[present.length];
            Arrays.fill(sums, BigDecimal.ZERO);
            var open = evidence.reports().entrySet().stream()
                    .filter(r -> r.getValue().ifPresent() > 0)
                    .toList();
            shared = open.stream()
                    .flatMap(r -> network.links(r.getKey()).stream())
                    .mapToInt(Link::cause)
                    .distinct()
                    .toArray();
            BigDecimal whole = BigDecimal.ONE;
            for (var report : evidence.reports().entrySet()) {
                if (report.getValue().ifPresent() == 0) {
                    whole = whole.multiply(new BigDecimal(report.getValue().ifAbsent()), DIGITS)
                            .multiply(takeAbsent(report.getKey(), present), DIGITS);
                }
            }
            add(open, 0, whole.multiply(product(present, alone()), DIGITS), present);
            for (int c : alone()) {
                sums[c] = total.multiply(present[c].divide(absent[c].add(present[c]), DIGITS), DIGITS);
            }
        }

        private int[] alone() {
            return IntStream.range(0, present.length)
                    .filter(c -> IntStream.of(shared).noneMatch(s -> s == c))
                    .toArray();
        }

        private BigDecimal product(BigDecimal[] weights, int[] causes) {
            BigDecimal product = BigDecimal.ONE;
            for (int c : causes) {
                product = product.multiply(absent[c].add(weights[c]), DIGITS);
            }
            return product;
        }

        double chanceOfEvidence() {
            return total.doubleValue();
        }

        double[] chances() {
            return Arrays.stream(sums)
                    .mapToDouble(sum -> sum.divide(total, DIGITS).doubleValue())
                    .toArray();
        }

        /** Weighs the present causes down by the finding's absence; the chance that the background leaves it out. */
        private BigDecimal takeAbsent(int finding, BigDecimal[] weights) {
            for (var link : network.links(finding)) {
                weights[link.cause()] = weights[link.cause()].multiply(
                        BigDecimal.ONE.subtract(new BigDecimal(link.strength())), DIGITS);
            }
            return BigDecimal.ONE.subtract(new BigDecimal(network.background(finding)));
        }

        private void add(List<Map.Entry<Integer, Report>> reports, int next, BigDecimal factor, BigDecimal[] weights) {
            if (next == reports.size()) {
                addTerm(factor, weights);
                return;
            }
            var report = reports.get(next).getValue();
            var ifPresent = new BigDecimal(report.ifPresent());
            add(reports, next + 1, factor.multiply(ifPresent, DIGITS), weights);
            var lessened = weights.clone();
            var left = takeAbsent(reports.get(next).getKey(), lessened);
            var difference = new BigDecimal(report.ifAbsent()).subtract(ifPresent);
            add(reports, next + 1, factor.multiply(difference, DIGITS).multiply(left, DIGITS), lessened);
        }

        private void addTerm(BigDecimal factor, BigDecimal[] weights) {
            BigDecimal term = factor.multiply(product(weights, shared), DIGITS);
            total = total.add(term, DIGITS);
            for (int c : shared) {
                BigDecimal share = weights[c].divide(absent[c].add(weights[c]), DIGITS);
                sums[c] = sums[c].add(term.multiply(share, DIGITS), DIGITS);
            }
        }
    }
}
