package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

class InvariantsTest {
    @Provide
    Arbitrary<RandomCase> cases() {
        return Arbitraries.randomValue(RandomCase::from);
    }

    @Property(tries = 200)
    void the_order_of_reports_does_not_matter(@ForAll("cases") RandomCase given, @ForAll Random random) {
        var before = posterior(given.network(), given.evidence());
        var shuffled = new ArrayList<>(given.evidence().reports().entrySet());
        Collections.shuffle(shuffled, random);
        var reports = new LinkedHashMap<Integer, Report>();
        shuffled.forEach(report -> reports.put(report.getKey(), report.getValue()));

        var after = posterior(
                given.network(), new GivenEvidence(reports, given.evidence().knownCauses()));

        assertThat(after.causes()).containsExactly(before.causes());
    }

    @Property(tries = 200)
    void the_order_of_links_and_findings_does_not_matter(@ForAll("cases") RandomCase given, @ForAll Random random) {
        var before = posterior(given.network(), given.evidence());

        int findings = given.network().findings();
        var places = new ArrayList<Integer>();
        for (int f = 0; f < findings; f++) {
            places.add(f);
        }
        Collections.shuffle(places, random);
        var links = new ArrayList<List<Link>>();
        var backgrounds = new double[findings];
        var reports = new LinkedHashMap<Integer, Report>();
        for (int f = 0; f < findings; f++) {
            int old = places.get(f);
            var ofFinding = new ArrayList<>(given.network().links(old));
            Collections.shuffle(ofFinding, random);
            links.add(ofFinding);
            backgrounds[f] = given.network().background(old);
            if (given.evidence().reports().containsKey(old)) {
                reports.put(f, given.evidence().reports().get(old));
            }
        }
        var reordered = new Network(priors(given.network()), backgrounds, links);
        var after =
                posterior(reordered, new GivenEvidence(reports, given.evidence().knownCauses()));

        assertThat(after.causes()).containsExactly(before.causes(), within(1e-9));
    }

    @Property(tries = 200)
    void only_the_ratio_of_a_report_moves_the_causes(
            @ForAll("cases") RandomCase given, @ForAll @DoubleRange(min = 0.01, max = 1000) double factor) {
        var before = posterior(given.network(), given.evidence());

        var scaled = given.evidence();
        for (var report : given.evidence().reports().entrySet()) {
            scaled = scaled.with(
                    report.getKey(),
                    new Report(
                            report.getValue().ifPresent() * factor,
                            report.getValue().ifAbsent() * factor));
        }
        var after = posterior(given.network(), scaled);

        int reports = given.evidence().reports().size();
        assertThat(after.causes()).containsExactly(before.causes(), within(1e-9));
        assertThat(after.logEvidence()).isCloseTo(before.logEvidence() + reports * Math.log(factor), within(1e-9));
    }

    @Property(tries = 200)
    void a_report_that_carries_nothing_changes_nothing(@ForAll("cases") RandomCase given) {
        Assume.that(given.askable().length > 0);
        int finding = given.askable()[0];
        var silent = given.evidence().without(finding);
        var before = posterior(given.network(), silent);

        var after = posterior(given.network(), silent.with(finding, new Report(0.5, 0.5)));

        assertThat(after.causes()).containsExactly(before.causes(), within(1e-12));
    }

    @Property(tries = 200)
    void a_cause_linked_to_nothing_stays_at_its_prior(@ForAll("cases") RandomCase given) {
        int causes = given.network().causes();
        var priors = Arrays.copyOf(priors(given.network()), causes + 1);
        priors[causes] = 0.37;
        var links = new ArrayList<List<Link>>();
        var backgrounds = new double[given.network().findings()];
        for (int f = 0; f < backgrounds.length; f++) {
            links.add(given.network().links(f));
            backgrounds[f] = given.network().background(f);
        }
        posterior(given.network(), given.evidence());

        var posterior = posterior(new Network(priors, backgrounds, links), given.evidence());

        assertThat(posterior.of(causes)).isCloseTo(0.37, within(1e-12));
    }

    @Property(tries = 200)
    void a_stronger_link_never_makes_the_sole_cause_of_a_present_finding_less_likely(
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double prior,
            @ForAll @DoubleRange(max = 1) double background,
            @ForAll @DoubleRange(max = 1) double one,
            @ForAll @DoubleRange(max = 1) double other) {
        Assume.that(background > 0 || Math.min(one, other) > 0);
        double weaker = soleCause(prior, background, Math.min(one, other));

        double stronger = soleCause(prior, background, Math.max(one, other));

        assertThat(stronger).isGreaterThanOrEqualTo(weaker - 1e-15);
    }

    @Property(tries = 200)
    void the_weight_of_a_report_is_what_withdrawing_it_takes_off_the_odds(@ForAll("cases") RandomCase given) {
        var inference = inferenceIfPossible(given);
        var now = inference.posterior(given.evidence());

        var weights = inference.weights(given.evidence(), given.allCauses());

        for (int i = 0; i < weights.findings().length; i++) {
            var then = inference.posterior(given.evidence().without(weights.findings()[i]));
            for (int c : given.allCauses()) {
                double odds = then.of(c) / (1 - then.of(c)) * Math.pow(10, weights.decibans()[i][c] / 10);
                if (then.of(c) > 1e-6 && then.of(c) < 1 - 1e-6 && odds < 1e6) {
                    assertThat(odds / (1 + odds)).isCloseTo(now.of(c), within(1e-9));
                }
            }
        }
    }

    @Property(tries = 200)
    void what_looking_can_tell_is_never_negative_and_never_more_about_one_cause_than_about_all(
            @ForAll("cases") RandomCase given) {
        var inference = inferenceIfPossible(given);

        for (var gain : inference.gains(given.evidence(), given.askable())) {
            double joint = inference.jointGain(given.evidence(), gain.finding());
            for (double bits : gain.bitsByCause()) {
                assertThat(bits).isBetween(0.0, joint + 1e-9);
            }
        }
    }

    private static double soleCause(double prior, double background, double strength) {
        var network =
                new Network(new double[] {prior}, new double[] {background}, List.of(List.of(new Link(0, strength))));
        return new ExactInference(network)
                .posterior(GivenEvidence.none().with(0, Report.PRESENT))
                .of(0);
    }

    private static Posterior posterior(Network network, GivenEvidence evidence) {
        try {
            return new ExactInference(network).posterior(evidence);
        } catch (ImpossibleEvidence impossible) {
            Assume.that(false);
            throw impossible;
        }
    }

    private static ExactInference inferenceIfPossible(RandomCase given) {
        posterior(given.network(), given.evidence());
        return new ExactInference(given.network());
    }

    private static double[] priors(Network network) {
        var priors = new double[network.causes()];
        for (int c = 0; c < priors.length; c++) {
            priors[c] = network.prior(c);
        }
        return priors;
    }
}
