package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against information-gain.csv; where it comes from is said in {@link ReferenceNetworks}. */
class PublishedGainsTest {
    private static final Map<String, Network> NETWORKS = ReferenceNetworks.networks();

    /** What is reported in each state of the table. */
    private static final Map<String, String> REPORTED =
            Map.of("E-A0", "-", "E-B0", "-", "E-B1", "F1=1", "E-B2", "F1=1;F2=1", "E-C1", "F1=1");

    static Stream<Map<String, String>> rows() {
        return ReferenceNetworks.rows("information-gain.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void every_test_has_the_gains_of_the_reference(Map<String, String> row) {
        var inference = new ExactInference(NETWORKS.get(row.get("network")));
        var evidence = ReferenceNetworks.evidence(REPORTED.get(row.get("state")), "-");
        int finding = ReferenceNetworks.index(row.get("test"));

        var gain = inference.gains(evidence, new int[] {finding}).get(0);
        double jointGain = inference.jointGain(evidence, finding);

        assertThat(gain.chance()).isCloseTo(Double.parseDouble(row.get("P_positive")), within(1e-9));
        assertThat(jointGain).isCloseTo(Double.parseDouble(row.get("EIG_joint_bits")), within(1e-9));
        for (int c = 0; c < NETWORKS.get(row.get("network")).causes(); c++) {
            double expected = Double.parseDouble(row.get("EIG_C" + (c + 1)));
            int place = Arrays.binarySearch(gain.causes(), c);
            double bits = place < 0 ? 0 : gain.bitsByCause()[place];
            assertThat(bits).as("C" + (c + 1)).isCloseTo(expected, within(1e-9));
        }
    }
}
