package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.MathContext;
import java.util.Arrays;
import java.util.HashSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Every answer against the definition, summed over all sets of causes in 60 digits. */
class EnumerationTest {
    @Provide
    Arbitrary<RandomCase> cases() {
        return Arbitraries.randomValue(RandomCase::from);
    }

    @Property(tries = 600)
    void posteriors_and_the_chance_of_the_evidence_are_those_of_enumeration(@ForAll("cases") RandomCase given) {
        var expected = new Enumeration(given.network(), given.evidence());
        var inference = new ExactInference(given.network());

        if (expected.chanceOfEvidence().signum() == 0) {
            assertThatThrownBy(() -> inference.posterior(given.evidence())).isInstanceOf(ImpossibleEvidence.class);
            return;
        }
        var posterior = inference.posterior(given.evidence());

        assertThat(posterior.logEvidence()).isCloseTo(expected.logEvidence(), within(1e-9));
        for (int c : given.allCauses()) {
            assertThat(posterior.of(c)).isCloseTo(expected.chanceOf(c), within(1e-9));
        }
    }

    @Property(tries = 300)
    void the_chance_of_any_of_several_causes_keeps_nine_digits_however_small(
            @ForAll("cases") RandomCase given, @ForAll int which) {
        var expected = possible(given);
        var causes = new HashSet<Integer>();
        for (int c : given.allCauses()) {
            if ((which >> c & 1) == 1) {
                causes.add(c);
            }
        }

        double any = new ExactInference(given.network()).anyOf(causes, given.evidence());

        double exact = expected.chanceOfAny(causes);
        assertThat(any).isCloseTo(exact, within(1e-9 * exact + 1e-300));
    }

    @Property(tries = 300)
    void weights_are_the_odds_with_and_without_the_report(@ForAll("cases") RandomCase given) {
        var with = possible(given);

        var weights = new ExactInference(given.network()).weights(given.evidence(), given.allCauses());

        for (int i = 0; i < weights.findings().length; i++) {
            var without = new Enumeration(given.network(), given.evidence().without(weights.findings()[i]));
            for (int c : given.allCauses()) {
                double now = orCertain(with.logOdds(c));
                double then = orCertain(without.logOdds(c));
                double decibans = now == then ? 0 : 10 * (now - then) / Math.log(10);
                if (Double.isInfinite(decibans)) {
                    assertThat(weights.decibans()[i][c]).isEqualTo(decibans);
                } else {
                    assertThat(weights.decibans()[i][c]).isCloseTo(decibans, within(1e-9));
                }
            }
        }
    }

    @Property(tries = 300)
    void gains_are_those_of_both_outcomes_weighed(@ForAll("cases") RandomCase given) {
        var now = possible(given);

        var gains = new ExactInference(given.network()).gains(given.evidence(), given.askable());

        for (var gain : gains) {
            var present = outcome(given, gain.finding(), true);
            var absent = outcome(given, gain.finding(), false);
            double chance = shareOf(present, now);
            assertThat(gain.chance()).isCloseTo(chance, within(1e-9 * chance + 1e-300));
            double sum = 0;
            for (int c : given.allCauses()) {
                double ifPresent = present.chanceOfEvidence().signum() > 0 ? present.chanceOf(c) : now.chanceOf(c);
                double ifAbsent = absent.chanceOfEvidence().signum() > 0 ? absent.chanceOf(c) : now.chanceOf(c);
                double bits = entropy(now.chanceOf(c)) - chance * entropy(ifPresent) - (1 - chance) * entropy(ifAbsent);
                int place = Arrays.binarySearch(gain.causes(), c);
                if (place < 0) {
                    assertThat(ifPresent).isCloseTo(now.chanceOf(c), within(1e-9));
                    assertThat(ifAbsent).isCloseTo(now.chanceOf(c), within(1e-9));
                    continue;
                }
                assertThat(gain.ifPresent()[place]).isCloseTo(ifPresent, within(1e-9));
                assertThat(gain.ifAbsent()[place]).isCloseTo(ifAbsent, within(1e-9));
                assertThat(gain.bitsByCause()[place])
                        .isCloseTo(bits, within(1e-9))
                        .isNotNegative();
                sum += bits;
            }
            assertThat(gain.bits()).isCloseTo(sum, within(1e-8));
        }
    }

    @Property(tries = 150)
    void the_joint_gain_is_the_entropy_of_the_set_of_causes_that_the_answer_removes(@ForAll("cases") RandomCase given) {
        var now = possible(given);
        var inference = new ExactInference(given.network());

        for (int finding : given.askable()) {
            double gain = inference.jointGain(given.evidence(), finding);

            var present = outcome(given, finding, true);
            var absent = outcome(given, finding, false);
            double chance = shareOf(present, now);
            double left = (chance > 0 ? chance * present.entropyOfSets() : 0)
                    + (chance < 1 ? (1 - chance) * absent.entropyOfSets() : 0);
            assertThat(gain).isCloseTo(now.entropyOfSets() - left, within(1e-9));
        }
    }

    /** Odds beyond 1e200 count as certain. */
    private static double orCertain(double logOdds) {
        return Math.abs(logOdds) > 200 * Math.log(10) ? Math.copySign(Double.POSITIVE_INFINITY, logOdds) : logOdds;
    }

    private static Enumeration possible(RandomCase given) {
        var enumeration = new Enumeration(given.network(), given.evidence());
        Assume.that(enumeration.chanceOfEvidence().signum() > 0);
        return enumeration;
    }

    /** The evidence and a sure answer on a finding; an unsure report on it stays as likely as it was. */
    private static Enumeration outcome(RandomCase given, int finding, boolean present) {
        var report = given.evidence().reports().getOrDefault(finding, new Report(1, 1));
        var sure = present ? new Report(report.ifPresent(), 0) : new Report(0, report.ifAbsent());
        return new Enumeration(given.network(), given.evidence().with(finding, sure));
    }

    private static double shareOf(Enumeration part, Enumeration whole) {
        return part.chanceOfEvidence()
                .divide(whole.chanceOfEvidence(), MathContext.DECIMAL64)
                .doubleValue();
    }

    private static double entropy(double p) {
        return p <= 0 || p >= 1 ? 0 : -(p * Math.log(p) + (1 - p) * Math.log(1 - p)) / Math.log(2);
    }
}
