package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

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
}
