package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Examples that textbooks print, put as networks of one or two causes and one finding. */
class TextbookExamplesTest {

    /**
     * Fourteen days, play on 9 (Mitchell, Machine Learning, chapter 3): H = 0.940 bits; humidity is high on 3 of the 9 and 4
     * of the other 5, wind strong on 3 and 3: gains printed as 0.151 and 0.048, recomputed 0.1518 and 0.0481.
     */
    @ParameterizedTest
    @CsvSource({"4, 0.1518355014", "3, 0.0481270304"})
    void the_fourteen_days(int of5, double bits) {
        double onPlay = 3 / 9.0;
        double strength = 1 - (1 - of5 / 5.0) / (1 - onPlay);
        var network =
                new Network(new double[] {5 / 14.0}, new double[] {onPlay}, List.of(List.of(new Link(0, strength))));
        var inference = new ExactInference(network);

        var gain = inference.gains(GivenEvidence.none(), new int[] {0}).get(0);

        assertThat(ExpectGain.entropy(5 / 14.0)).isCloseTo(0.9402859587, within(1e-9));
        assertThat(gain.bitsByCause()[0]).isCloseTo(bits, within(1e-9));
        assertThat(inference.jointGain(GivenEvidence.none(), 0)).isCloseTo(bits, within(1e-9));
    }

    /** Of independent causes with chance p each at least one is there with 3p - 3p^2 + p^3 (inclusion and exclusion). */
    @Test
    void any_of_three_rare_independent_causes() {
        double p = 2e-4;
        var network = new Network(new double[] {p, p, p}, new double[0], List.of());

        double any = new ExactInference(network).anyOf(Set.of(0, 1, 2), GivenEvidence.none());

        assertThat(any).isCloseTo(3 * p - 3 * p * p + p * p * p, within(1e-15));
    }

    /** Burglary and earthquake, and the alarm that either sets off. */
    private static Network alarm() {
        double byItself = 0.001;
        return new Network(
                new double[] {0.001, 0.002},
                new double[] {byItself},
                List.of(List.of(
                        new Link(0, 1 - (1 - 0.94) / (1 - byItself)), new Link(1, 1 - (1 - 0.29) / (1 - byItself)))));
    }

    /**
     * The burglar alarm of the textbooks (Russell and Norvig, from memory: priors .001 and .002, alarm .94, .29, .001, both
     * .95): P(burglary | alarm) is printed as 0.374. As a noisy-OR both together give .957 in place of .95, which changes the
     * answer in the sixth place.
     */
    @Test
    void the_burglar_alarm() {
        var posterior =
                new ExactInference(alarm()).posterior(GivenEvidence.none().with(0, Report.PRESENT));

        assertThat(posterior.of(0)).isCloseTo(0.374, within(5e-4));
    }

    /**
     * The same, when nobody heard the alarm but both neighbours call (.90 to .05, .70 to .01): two reports of one finding,
     * .63 to .0005 together. Printed as 0.284; recomputed 0.284172 with .95, 0.284175 with .957.
     */
    @Test
    void the_burglar_alarm_as_two_neighbours_tell_of_it() {
        var posterior = new ExactInference(alarm())
                .posterior(GivenEvidence.none().with(0, new Report(0.90 * 0.70, 0.05 * 0.01)));

        assertThat(posterior.of(0)).isCloseTo(0.28417, within(1e-5));
    }
}
