package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The sweep over all innocents; its counts are printed. */
class InnocentSweepTest {
    private static final int SOME = 4;
    private static final int MANY = 200;
    /**
     * What is left over many draws, by age or upkeep alone: a cause drawn without the mark that it nearly always leaves.
     * None of them names a driver, a tow operator, a shop or a maker.
     */
    private static final double MOST_FAILING = 0.0005;

    /** What may be left over in so few draws. */
    private static final int FEW = 2;

    private static final long SEED = 20_261_126;

    private final InnocentSweep sweep = new InnocentSweep(new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load()));

    @Test
    void what_one_cause_leaves_is_never_concluded_as_anothers() {
        InnocentSweep.Outcome outcome = sweep.pairs();
        System.out.println("innocent sweep: " + outcome.pairs() + " pairs, " + outcome.cases() + " cases, "
                + outcome.failures().size() + " failing");
        assertThat(outcome.pairs()).isGreaterThan(500);
        assertThat(outcome.failures()).isEmpty();
    }

    @Test
    void cases_drawn_from_a_causes_own_strengths_name_nobody_else() {
        InnocentSweep.Outcome outcome = drawn(SOME);
        assertThat(outcome.failures()).noneMatch(sweep::namesSomebody).hasSizeLessThanOrEqualTo(FEW);
    }

    @Test
    @Tag("long")
    void many_cases_drawn_from_a_causes_own_strengths_hardly_ever_conclude_another_owner() {
        InnocentSweep.Outcome outcome = drawn(MANY);
        assertThat(outcome.failures()).noneMatch(sweep::namesSomebody);
        assertThat(outcome.failures().size() / (double) outcome.cases()).isLessThan(MOST_FAILING);
    }

    private InnocentSweep.Outcome drawn(int each) {
        InnocentSweep.Outcome outcome = sweep.drawn(each, SEED);
        System.out.println("innocents drawn: " + outcome.pairs() + " causes, " + outcome.cases() + " cases, "
                + outcome.failures().size() + " failing");
        return outcome;
    }
}
