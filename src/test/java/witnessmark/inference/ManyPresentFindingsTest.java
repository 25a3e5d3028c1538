package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ManyPresentFindingsTest {
    @Test
    void twelve_causes_and_twenty_present_findings_are_exact_where_inclusion_exclusion_is_useless() {
        var network = network(12, 20, 2, new Random(4));
        var evidence = allPresent(20);

        var posterior = new ExactInference(network).posterior(evidence);

        var expected = new Enumeration(network, evidence);
        double[] cancelled =
                InclusionExclusion.posterior(network, IntStream.range(0, 20).toArray());
        double worstOfCancelled = 0;
        for (int c = 0; c < network.causes(); c++) {
            assertThat(posterior.of(c)).isCloseTo(expected.chanceOf(c), within(1e-9));
            worstOfCancelled = Math.max(worstOfCancelled, Math.abs(cancelled[c] - expected.chanceOf(c)));
        }
        assertThat(worstOfCancelled).isGreaterThan(0.01);
    }

    @Test
    void ten_causes_each_linked_to_each_of_many_findings_are_exact() {
        var network = network(10, 25, 10, new Random(5));
        var evidence = allPresent(25);

        var posterior = new ExactInference(network).posterior(evidence);

        var expected = new Enumeration(network, evidence);
        for (int c = 0; c < network.causes(); c++) {
            assertThat(posterior.of(c)).isCloseTo(expected.chanceOf(c), within(1e-9));
        }
    }

    @Test
    void a_network_too_dense_for_the_tables_allowed_is_refused_with_what_it_would_need() {
        var network = network(40, 40, 40, new Random(6));
        var inference = new ExactInference(network);

        assertThatThrownBy(() -> inference.posterior(allPresent(40)))
                .isInstanceOfSatisfying(TooDense.class, refusal -> {
                    assertThat(refusal.statesNeeded()).isGreaterThan(1e12);
                    assertThat(refusal.statesAllowed()).isEqualTo(1 << 24);
                })
                .hasMessageMatching(
                        "too many things have been found at once .*"
                                + "\\(too many findings share causes: \\S+ states to be gone through, 16777216 are allowed\\); .*");
    }

    @Test
    void the_same_network_is_answered_when_its_findings_are_absent() {
        var network = network(40, 40, 40, new Random(6));
        var evidence =
                GivenEvidence.of(IntStream.range(0, 40).boxed().collect(Collectors.toMap(f -> f, f -> Report.ABSENT)));

        var posterior = new ExactInference(network).posterior(evidence);

        for (int c = 0; c < network.causes(); c++) {
            double present = network.prior(c);
            for (int f = 0; f < network.findings(); f++) {
                present *= 1 - network.strengths(f)[c];
            }
            assertThat(posterior.of(c)).isCloseTo(present / (present + 1 - network.prior(c)), within(1e-12));
        }
    }

    private static GivenEvidence allPresent(int findings) {
        Map<Integer, Report> reports =
                IntStream.range(0, findings).boxed().collect(Collectors.toMap(f -> f, f -> Report.PRESENT));
        return GivenEvidence.of(reports);
    }

    private static Network network(int causes, int findings, int linksPerFinding, Random random) {
        var links = new ArrayList<List<Link>>();
        for (int f = 0; f < findings; f++) {
            links.add(random.ints(0, causes)
                    .distinct()
                    .limit(linksPerFinding)
                    .sorted()
                    .mapToObj(c -> new Link(c, 0.1 + 0.8 * random.nextDouble()))
                    .toList());
        }
        return new Network(
                random.doubles(causes, 0.001, 0.02).toArray(),
                random.doubles(findings, 0.001, 0.005).toArray(),
                links);
    }
}
