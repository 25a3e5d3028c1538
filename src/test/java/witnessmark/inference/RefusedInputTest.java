package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RefusedInputTest {
    private static final Network NETWORK =
            new Network(new double[] {0.1, 0.2}, new double[] {0.01}, List.of(List.of(new Link(0, 0.5))));
    private static final ExactInference INFERENCE = new ExactInference(NETWORK);

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 1.1, Double.NaN, Double.POSITIVE_INFINITY})
    void a_strength_that_is_no_probability(double strength) {
        assertThatThrownBy(() -> new Link(3, strength))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("Link to cause 3 has strength " + strength + ": give a probability from 0 to 1.");
    }

    @Test
    void a_link_to_a_negative_cause() {
        assertThatThrownBy(() -> new Link(-1, 0.5)).hasMessage("Link to cause -1: give an index of 0 or more.");
    }

    @ParameterizedTest
    @CsvSource({"0,0", "-1,1", "1,NaN", "Infinity,1"})
    void a_report_without_usable_chances(double ifPresent, double ifAbsent) {
        assertThatThrownBy(() -> new Report(ifPresent, ifAbsent))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("Report " + ifPresent + ":" + ifAbsent
                        + ": give two finite numbers of 0 or more, at least one of them above 0.");
    }

    @Test
    void every_fault_of_a_network_at_once() {
        var links = List.of(List.of(new Link(0, 0.5), new Link(0, 0.6), new Link(7, 0.1)), List.<Link>of());

        assertThatThrownBy(() -> new Network(new double[] {1.5, 0.1}, new double[] {Double.NaN}, links))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        """
                        prior of cause 0 is 1.5: give a probability from 0 to 1.
                        background of finding 0 is NaN: give a probability from 0 to 1.
                        2 lists of links for 1 findings: give one list for each finding.
                        finding 0 is linked twice to cause 0: keep one link.
                        finding 0 is linked to cause 7: there are 2 causes, from index 0.""");
    }

    @Test
    void other_priors_than_one_for_each_cause() {
        assertThatThrownBy(() -> NETWORK.withPriors(new double[] {0.1}))
                .hasMessage("1 priors for 2 causes: give one for each cause.");
        assertThatThrownBy(() -> NETWORK.withPriors(new double[] {0.1, -0.2}))
                .hasMessage("prior of cause 1 is -0.2: give a probability from 0 to 1.");
    }

    @Test
    void evidence_on_what_the_network_does_not_have() {
        var evidence = new GivenEvidence(Map.of(1, Report.PRESENT, -1, Report.ABSENT), Map.of(2, true));

        assertThatThrownBy(() -> INFERENCE.posterior(evidence))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        """
                        report on finding -1: there are 1 findings, from index 0.
                        report on finding 1: there are 1 findings, from index 0.
                        known cause 2: there are 2 causes, from index 0.""");
    }

    @Test
    void questions_about_what_the_network_does_not_have() {
        var none = GivenEvidence.none();

        assertThatThrownBy(() -> INFERENCE.anyOf(Set.of(5), none))
                .hasMessage("cause 5: there are 2 causes, from index 0.");
        assertThatThrownBy(() -> INFERENCE.weights(none, new int[] {-1}))
                .hasMessage("cause -1: there are 2 causes, from index 0.");
        assertThatThrownBy(() -> INFERENCE.gains(none, new int[] {1}))
                .hasMessage("finding 1: there are 1 findings, from index 0.");
    }

    @Test
    void looking_again_at_what_is_certain() {
        assertThatThrownBy(() -> INFERENCE.gains(GivenEvidence.none().with(0, Report.ABSENT), new int[] {0}))
                .hasMessage("finding 0 is already reported for certain: ask about findings not looked at or unsure.");
    }

    @Test
    void the_joint_gain_of_a_finding_with_more_causes_than_can_be_gone_through() {
        var links = IntStream.range(0, 17).mapToObj(c -> new Link(c, 0.5)).toList();
        var priors = new double[17];
        Arrays.fill(priors, 0.1);
        var inference = new ExactInference(new Network(priors, new double[] {0}, List.of(links)));

        assertThatThrownBy(() -> inference.jointGain(GivenEvidence.none(), 0))
                .isInstanceOf(TooDense.class)
                .hasMessageContaining(
                        "(too many causes are linked to finding 0: 1.31e+05 states to be gone through, 65536 are allowed)")
                .hasMessageEndingWith("; look again at the last things found, and take back what does not hold");
        assertThat(inference.gains(GivenEvidence.none(), new int[] {0}).get(0).bits())
                .isPositive();
    }

    @ParameterizedTest
    @ValueSource(longs = {0, -1, (1L << 28) + 1})
    void a_size_of_tables_that_cannot_be(long states) {
        assertThatThrownBy(() -> new ExactInference(NETWORK, states))
                .hasMessage(states + " table entries: give a number from 1 to 2^28.");
    }

    @Test
    void nothing_at_all_is_no_fault() {
        var empty = new ExactInference(new Network(new double[0], new double[0], List.of()));

        assertThat(empty.posterior(GivenEvidence.none()).causes()).isEmpty();
        assertThat(empty.logEvidence(GivenEvidence.none())).isZero();
        assertThat(empty.anyOf(Set.of(), GivenEvidence.none())).isZero();
        assertThat(empty.gains(GivenEvidence.none(), new int[0])).isEmpty();
    }
}
