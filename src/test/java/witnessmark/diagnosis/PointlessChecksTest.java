package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Reckoned;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.KnowledgeBase;

/** What is never advised next, since the answers settled it. */
class PointlessChecksTest {
    private static final Diagnosis DIAGNOSIS = SmallTrade.diagnosis();

    private static List<String> next(CaseFile file) {
        return nextOf(DIAGNOSIS, file);
    }

    private static List<String> nextOf(Diagnosis diagnosis, CaseFile file) {
        return diagnosis.judge(file).nextChecks().stream()
                .map(NextCheck::finding)
                .toList();
    }

    @Test
    void what_would_have_brought_something_that_is_not_there_is_not_asked() {
        assertThat(next(SmallTrade.caseWith())).contains("outlet-low");
        assertThat(next(SmallTrade.caseWith("no test-proper"))).doesNotContain("outlet-low");
    }

    @Test
    void of_what_is_shipped_nothing_that_follows_is_asked_but_how_it_was_taken() {
        Diagnosis shipped = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
        KnowledgeBase knowledge = shipped.knowledge();
        assertThat(knowledge.follows()).isNotEmpty();
        knowledge.follows().stream()
                .filter(rule ->
                        !knowledge.findings().get(rule.premise()).needs().contains(rule.conclusion()))
                .forEach(rule -> assertThat(nextOf(shipped, SmallTrade.caseWith(rule.premise())))
                        .doesNotContain(rule.conclusion()));
    }

    @Test
    void what_cannot_stand_beside_a_finding_that_is_there_is_not_asked() {
        assertThat(next(SmallTrade.caseWith("towed"))).contains("hubs-scored");
        assertThat(next(SmallTrade.caseWith("towed", "hubs-sound"))).doesNotContain("hubs-scored");
    }

    @Test
    void what_this_gearbox_has_not_got_is_not_asked() {
        CaseFile without = SmallTrade.sheet("cone-burned")
                .gearbox(SmallTrade.withoutSplitter())
                .toCaseFile();
        assertThat(next(without)).doesNotContain("split-slow");
    }

    @Test
    void what_only_causes_out_of_question_would_leave_is_not_asked() {
        // A burned cone is explained by two causes; the tow is none of them, so nobody asks for the tow paper.
        assertThat(next(SmallTrade.caseWith("cone-burned"))).doesNotContain("towed", "hubs-scored");
    }

    @Test
    void what_was_answered_is_not_asked_again() {
        assertThat(next(SmallTrade.caseWith("cone-burned", "no leak", "unsure log-shows-it")))
                .doesNotContain("cone-burned", "leak", "log-shows-it");
    }

    /** Common practice, no source: a seal hurt at a rebuild is no reason why a gear jumps out. */
    @Test
    void after_a_repair_what_explains_the_complaint_comes_before_all_else_that_may_have_been_done_badly() {
        Diagnosis shipped = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
        List<String> complaint = List.of("slips-out-under-pull", "repaired-lately", "fault-since-repair");

        List<NextCheck> checks = shipped.judge(
                        SmallTrade.sheet(complaint.toArray(String[]::new)).toCaseFile())
                .nextChecks();

        List<Boolean> explains = checks.stream()
                .filter(check -> check.bearing() == NextCheck.Bearing.CAUSE)
                .map(check -> shipped.knowledge().causes().get(check.cause()).links().stream()
                        .anyMatch(link -> link.finding().equals("slips-out-under-pull")))
                .toList();
        assertThat(explains.subList(0, 60)).doesNotContain(false);
        assertThat(checks).map(NextCheck::finding).doesNotContain("regulator-outlet-high", "cover-gasket-torn");
    }

    @Test
    void what_was_reckoned_and_counts_for_nothing_beside_another_of_the_same_act_is_not_asked() {
        Diagnosis shipped = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
        CaseSheet burned = SmallTrade.sheet("range-cone-low-burned", "range-grinds-into-low");
        assertThat(nextOf(shipped, burned.toCaseFile())).contains("computed-cone-energy-high");

        CaseFile reckoned = burned.evidence(new Evidence(
                        "shift",
                        Evidence.Kind.COMPUTED,
                        "one shift, reckoned",
                        "",
                        Map.of(),
                        Optional.empty(),
                        Map.of("computed-low-range-above-ceiling", FindingState.ABSENT),
                        Map.of(),
                        Optional.empty(),
                        Map.of(
                                "computed-cone-energy-high",
                                new Reckoned(0.7, Unit.RATIO, 1, Unit.RATIO, Reckoned.Outcome.NOT_COUNTED))))
                .toCaseFile();

        assertThat(nextOf(shipped, reckoned)).isNotEmpty().doesNotContain("computed-cone-energy-high");
        assertThat(shipped.judge(reckoned).causes().stream().flatMap(c -> c.unchecked().stream()))
                .isNotEmpty()
                .doesNotContain("computed-cone-energy-high");
    }
}
