package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class FarFetchedEvidenceTest {
    @Test
    void evidence_less_likely_than_any_double_is_still_exact() {
        // Two present findings share two causes; every way to explain them is rarer than 1e-300.
        var network = new Network(
                new double[] {1e-200, 2e-200, 1e-10},
                new double[] {0, 0, 1e-200},
                List.of(
                        List.of(new Link(0, 1e-100), new Link(1, 1e-100)),
                        List.of(new Link(0, 1e-100), new Link(1, 1e-100)),
                        List.of(new Link(1, 1e-100), new Link(2, 1e-200))));
        var evidence = GivenEvidence.none()
                .with(0, Report.PRESENT)
                .with(1, Report.PRESENT)
                .with(2, Report.PRESENT);

        var posterior = new ExactInference(network).posterior(evidence);

        var expected = new Enumeration(network, evidence, 600);
        assertThat(posterior.logEvidence())
                .isCloseTo(expected.logEvidence(), within(1e-9))
                .isLessThan(-1000);
        for (int c = 0; c < 3; c++) {
            assertThat(posterior.of(c)).isCloseTo(expected.chanceOf(c), within(1e-9));
        }
    }

    @Property(tries = 150)
    void minute_chances_are_those_of_enumeration(@ForAll long seed) {
        var random = new Random(seed);
        var network = networkOfMinuteChances(random);
        var evidence = GivenEvidence.none();
        for (int f = 0; f < network.findings(); f++) {
            evidence = evidence.with(f, f % 3 == 2 ? new Report(minute(random), minute(random)) : Report.PRESENT);
        }

        var posterior = new ExactInference(network).posterior(evidence);

        var expected = new Enumeration(network, evidence, 400);
        assertThat(posterior.logEvidence()).isCloseTo(expected.logEvidence(), within(1e-9));
        for (int c = 0; c < network.causes(); c++) {
            assertThat(posterior.of(c)).isCloseTo(expected.chanceOf(c), within(1e-9));
        }
    }

    @Test
    void evidence_at_the_edge_of_the_number_range_keeps_its_digits() {
        // Either cause explains both findings, at about 1e-318: as a plain double, three digits would be left.
        var network = new Network(
                new double[] {1e-158, 1.7e-158},
                new double[] {0, 0},
                List.of(
                        List.of(new Link(0, 1e-80), new Link(1, 1e-80)),
                        List.of(new Link(0, 1e-80), new Link(1, 1e-80))));
        var evidence = GivenEvidence.none().with(0, Report.PRESENT).with(1, Report.PRESENT);

        var posterior = new ExactInference(network).posterior(evidence);

        assertThat(posterior.of(0)).isCloseTo(1 / 2.7, within(1e-12));
        assertThat(posterior.of(1)).isCloseTo(1.7 / 2.7, within(1e-12));
    }

    @Test
    void reports_at_the_ends_of_the_number_range_keep_their_ratio() {
        var network = new Network(
                new double[] {0.1, 0.2},
                new double[] {0.01, 0.02},
                List.of(List.of(new Link(0, 0.5), new Link(1, 0.4)), List.of(new Link(0, 0.3), new Link(1, 0.9))));
        var evidence = GivenEvidence.none()
                .with(0, new Report(Double.MIN_VALUE, Double.MAX_VALUE))
                .with(1, new Report(Double.MAX_VALUE, Double.MIN_VALUE));

        var posterior = new ExactInference(network).posterior(evidence);

        var expected = new Enumeration(
                network, GivenEvidence.none().with(0, Report.ABSENT).with(1, Report.PRESENT));
        assertThat(posterior.of(0)).isCloseTo(expected.chanceOf(0), within(1e-12));
        assertThat(posterior.of(1)).isCloseTo(expected.chanceOf(1), within(1e-12));
    }

    @Test
    void a_hundred_causes_all_refuted_by_fifty_absent_findings_each_do_not_underflow() {
        var links = new ArrayList<List<Link>>();
        for (int f = 0; f < 50; f++) {
            var ofFinding = new ArrayList<Link>();
            for (int c = 0; c < 100; c++) {
                ofFinding.add(new Link(c, 0.999));
            }
            links.add(ofFinding);
        }
        var priors = new double[100];
        Arrays.fill(priors, 0.999);
        var network = new Network(priors, new double[50], links);
        var evidence = GivenEvidence.none();
        for (int f = 0; f < 50; f++) {
            evidence = evidence.with(f, Report.ABSENT);
        }

        var inference = new ExactInference(network);

        // Every cause: odds 999 * 0.001^50; no cause at all remains, at 0.001^100.
        assertThat(inference.logEvidence(evidence)).isCloseTo(100 * Math.log1p(-0.999), within(1e-9));
        assertThat(inference.posterior(evidence).of(0) / (999 * Math.pow(1 - 0.999, 50)))
                .isCloseTo(1, within(1e-9));
        assertThat(inference.weights(evidence, new int[] {0}).decibans()[0][0])
                .isCloseTo(10 * Math.log10(1 - 0.999), within(1e-9));
    }

    @Test
    void a_contradiction_between_several_findings_is_told_from_a_rare_case() {
        // Finding 0 needs cause 0, which is certain to give finding 1, which is absent.
        var network = new Network(
                new double[] {0.1, 0.1},
                new double[] {0, 0, 0.1},
                List.of(List.of(new Link(0, 0.5)), List.of(new Link(0, 1)), List.of(new Link(1, 0.5))));
        var inference = new ExactInference(network);
        var evidence = GivenEvidence.none()
                .with(0, Report.PRESENT)
                .with(1, Report.ABSENT)
                .with(2, Report.PRESENT);

        assertThatThrownBy(() -> inference.logEvidence(evidence))
                .isInstanceOfSatisfying(ImpossibleEvidence.class, impossible -> assertThat(impossible.findings())
                        .containsExactly(0, 1));
    }

    @Test
    void absent_findings_that_a_known_cause_is_certain_to_give_are_named() {
        var network = new Network(
                new double[] {0.1}, new double[] {0, 0.1}, List.of(List.of(new Link(0, 1)), List.of(new Link(0, 0.5))));
        var inference = new ExactInference(network);
        var evidence =
                GivenEvidence.none().withCause(0, true).with(0, Report.ABSENT).with(1, Report.ABSENT);

        assertThatThrownBy(() -> inference.posterior(evidence))
                .isInstanceOfSatisfying(ImpossibleEvidence.class, impossible -> assertThat(impossible.findings())
                        .containsExactly(0));
    }

    private static Network networkOfMinuteChances(Random random) {
        int causes = 2 + random.nextInt(3);
        int findings = 2 + random.nextInt(4);
        var links = new ArrayList<List<Link>>();
        for (int f = 0; f < findings; f++) {
            links.add(IntStream.range(0, causes)
                    .mapToObj(c -> new Link(c, random.nextInt(3) == 0 ? random.nextDouble() : minute(random)))
                    .toList());
        }
        return new Network(
                IntStream.range(0, causes).mapToDouble(c -> minute(random)).toArray(),
                IntStream.range(0, findings)
                        .mapToDouble(f -> minute(random) * 1e-100)
                        .toArray(),
                links);
    }

    /** From 1 down to 1e-150, evenly over the powers of ten. */
    private static double minute(Random random) {
        return Math.pow(10, -150 * random.nextDouble());
    }
}
