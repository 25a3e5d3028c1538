package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against posteriors.csv; where it comes from is said in {@link ReferenceNetworks}. */
class PublishedPosteriorsTest {
    private static final Map<String, Network> NETWORKS = ReferenceNetworks.networks();

    static Stream<Map<String, String>> rows() {
        return ReferenceNetworks.rows("posteriors.csv").stream();
    }

    static Stream<Map<String, String>> possibleRows() {
        return rows().filter(row -> !row.get("P_evidence").equals("0"));
    }

    @ParameterizedTest
    @MethodSource("possibleRows")
    void every_case_has_the_posteriors_of_the_reference(Map<String, String> row) {
        var inference = new ExactInference(NETWORKS.get(row.get("network")));

        var posterior =
                inference.posterior(ReferenceNetworks.evidence(row.get("finding_evidence"), row.get("cause_evidence")));

        for (int c = 0; c < posterior.causes().length; c++) {
            double expected = Double.parseDouble(row.get("C" + (c + 1)));
            assertThat(posterior.of(c)).as("C" + (c + 1)).isCloseTo(expected, within(1e-9));
        }
        double chance = Double.parseDouble(row.get("P_evidence"));
        assertThat(Math.exp(posterior.logEvidence())).isCloseTo(chance, within(1e-11 * chance));
    }

    @ParameterizedTest
    @MethodSource("possibleRows")
    void every_case_has_the_chance_of_no_cause_of_the_reference(Map<String, String> row) {
        var network = NETWORKS.get(row.get("network"));
        var all = IntStream.range(0, network.causes()).boxed().collect(Collectors.toSet());

        double any = new ExactInference(network).anyOf(all, evidence(row));

        assertThat(1 - any).isCloseTo(Double.parseDouble(row.get("P_no_cause")), within(1e-9));
    }

    @Test
    void a_certain_finding_of_a_cause_known_absent_is_refused_as_impossible() {
        var row = rows().filter(r -> r.get("case").equals("C-10")).findFirst().orElseThrow();
        var inference = new ExactInference(NETWORKS.get("C"));

        var thrown = catchThrowableOfType(ImpossibleEvidence.class, () -> inference.posterior(evidence(row)));

        assertThat(thrown.findings()).containsExactly(4);
        assertThat(thrown)
                .hasMessage("No set of causes can give what was reported of findings [4] with the causes known: "
                        + "withdraw one of these reports or known causes.");
    }

    private static GivenEvidence evidence(Map<String, String> row) {
        return ReferenceNetworks.evidence(row.get("finding_evidence"), row.get("cause_evidence"));
    }
}
