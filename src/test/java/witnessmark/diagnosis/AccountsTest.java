package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Two accounts held against findings, worked out by hand from the strengths and backgrounds of the small trade. */
class AccountsTest {
    private static final Diagnosis DIAGNOSIS = SmallTrade.diagnosis();

    private static Accounts accounts(String... findings) {
        try (OpenCase open = DIAGNOSIS.open(SmallTrade.caseWith(findings))) {
            return open.accounts("tow", "exclusion-habit");
        }
    }

    @Test
    void a_finding_of_one_account_alone_speaks_for_it_by_the_ratio_of_the_chances() {
        // towed: usually (0.80) over its background if towed, the background alone if not; the background is raised
        // from
        // 0.015 to 0.80 / 30, since a paper weighs at most 30 times.
        double ifTowed = 1 - (1 - 0.80 / 30) * (1 - 0.80);
        Accounts accounts = accounts("towed");

        Accounts.Said said = accounts.findings().get(0);
        assertThat(said.ifFirst()).isCloseTo(ifTowed, within(1e-12));
        assertThat(said.ifSecond()).isCloseTo(0.80 / 30, within(1e-12));
        assertThat(said.decibans()).isCloseTo(10 * Math.log10(ifTowed / (0.80 / 30)), within(1e-9));
        assertThat(accounts.decibansAlone()).isCloseTo(said.decibans(), within(1e-12));
    }

    @Test
    void a_finding_that_both_leave_says_nothing_between_them() {
        assertThat(accounts("hubs-scored").findings().get(0).decibans()).isCloseTo(0, within(1e-12));
    }

    @Test
    void a_paper_not_found_speaks_only_a_little_against_the_account_that_would_leave_it() {
        // Not on paper although so: 0.67 of the chance where it is not so.
        double background = 0.80 / 30;
        double ifTowed = 1 - (1 - background) * (1 - 0.80);

        assertThat(accounts("no towed").decibansAlone())
                .isCloseTo(
                        10 * Math.log10((0.67 * ifTowed + 1 - ifTowed) / (0.67 * background + 1 - background)),
                        within(1e-9));
    }

    @Test
    void the_finding_that_only_one_would_leave_decides() {
        Accounts accounts = accounts("hubs-scored");

        assertThat(accounts.deciding().get(0).finding()).isEqualTo("towed");
        assertThat(accounts.deciding().get(0).expectedDecibans()).isGreaterThan(5);
    }

    @Test
    void an_answered_finding_decides_nothing_any_more() {
        assertThat(accounts("towed").deciding())
                .extracting(Accounts.Deciding::finding)
                .doesNotContain("towed");
    }

    @Test
    void exchanging_the_accounts_turns_every_sign_round() {
        try (OpenCase open = DIAGNOSIS.open(SmallTrade.caseWith("towed", "hubs-scored"))) {
            Accounts one = open.accounts("tow", "exclusion-habit");
            Accounts other = open.accounts("exclusion-habit", "tow");
            assertThat(one.decibansAlone()).isCloseTo(-other.decibansAlone(), within(1e-9));
            assertThat(one.decibansWithOthers()).isCloseTo(-other.decibansWithOthers(), within(1e-9));
            assertThat(one.priorDecibans()).isCloseTo(-other.priorDecibans(), within(1e-9));
        }
    }

    /** Where several findings tell the same fact only one of them enters; the others must not be looked for. */
    @Test
    void the_two_likeliest_causes_of_every_sample_can_be_held_against_each_other() {
        Diagnosis shipped = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
        for (var sample : ShippedKnowledge.samples()) {
            try (OpenCase open = shipped.open(sample.present())) {
                List<RankedCause> causes = open.judgement().causes();
                if (causes.size() > 1) {
                    Accounts accounts =
                            open.accounts(causes.get(0).id(), causes.get(1).id());
                    assertThat(accounts.decibansAlone())
                            .as(sample.present().id().text())
                            .isFinite();
                }
            }
        }
    }
}
