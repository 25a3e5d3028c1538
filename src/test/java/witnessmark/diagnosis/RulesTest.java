package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Measurement;
import witnessmark.gearbox.Unit;

/** Each rule with a case it fires on and one it must not fire on. Facts of the trade: common practice, no source. */
class RulesTest {
    private static final Diagnosis DIAGNOSIS = SmallTrade.diagnosis();

    private static Judgement judge(String... findings) {
        return DIAGNOSIS.judge(SmallTrade.caseWith(findings));
    }

    private static RankedCause cause(Judgement judgement, String id) {
        return judgement.causes().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static Judgement judge(Measurement measurement, String... findings) {
        CaseFile file = SmallTrade.sheet(findings).measurement(measurement).toCaseFile();
        return DIAGNOSIS.judge(file);
    }

    @Test
    void the_rule_base_is_not_empty() {
        assertThat(RuleBase.shipped().size()).isGreaterThanOrEqualTo(25);
    }

    @Nested
    class Measurements {
        @Test
        void a_value_below_the_low_limit_shows_the_finding() {
            Judgement judgement = judge(SmallTrade.outletBar(3.1, 3.9, 4.3), "cone-burned");
            assertThat(cause(judgement, "low-air").evidenceFor())
                    .extracting(RankedCause.Weight::finding)
                    .contains("outlet-low");
        }

        @Test
        void a_value_on_the_low_limit_is_good() {
            Judgement judgement = judge(SmallTrade.outletBar(3.9, 3.9, 4.3), "cone-burned");
            assertThat(cause(judgement, "low-air").evidenceAgainst())
                    .extracting(RankedCause.Weight::finding)
                    .contains("outlet-low");
        }

        @Test
        void a_value_above_the_high_limit_shows_the_other_finding_which_excludes_low_air() {
            Judgement high = judge(SmallTrade.outletBar(4.31, 3.9, 4.3), "cone-burned");
            Judgement right = judge(SmallTrade.outletBar(4.3, 3.9, 4.3), "cone-burned");
            assertThat(cause(high, "low-air").probability())
                    .isLessThan(cause(right, "low-air").probability());
        }

        @Test
        void units_are_converted_before_they_are_compared() {
            // 44 psi is 3.034 bar (1 psi = 6894.757 Pa, NIST SP 811, from memory).
            Measurement psi = new Measurement(
                    "outlet", 44, Unit.PSI, SmallTrade.outletBar(1, 3.9, 4.3).limits(), "");
            assertThat(cause(judge(psi, "cone-burned"), "low-air").probability())
                    .isGreaterThan(0.9);
        }

        @Test
        void a_value_without_a_limit_is_remarked_on_and_moves_nothing() {
            Measurement bare = new Measurement("outlet", 3.1, Unit.BAR, Optional.empty(), "");
            Judgement with = judge(bare, "cone-burned");
            Judgement without = judge("cone-burned");
            assertThat(with.remarks()).anyMatch(r -> r.contains("no limit was given"));
            assertThat(cause(with, "low-air").probability())
                    .isEqualTo(cause(without, "low-air").probability());
            assertThat(without.remarks()).isEmpty();
        }

        @Test
        void a_report_against_its_own_measurement_is_a_contradiction_and_counts_as_unsure() {
            Judgement judgement = judge(SmallTrade.outletBar(3.1, 3.9, 4.3), "cone-burned", "no outlet-low");
            assertThat(judgement.contradictions()).singleElement().satisfies(c -> assertThat(c.findings())
                    .containsExactly("outlet-low"));
        }

        @Test
        void a_report_that_agrees_with_its_measurement_is_none() {
            assertThat(judge(SmallTrade.outletBar(3.1, 3.9, 4.3), "outlet-low").contradictions())
                    .isEmpty();
        }
    }

    @Nested
    class ChecksDoneProperly {
        @Test
        void a_leak_test_not_done_properly_counts_as_unsure() {
            Judgement doubted = judge("cone-burned", "leak", "no test-proper");
            Judgement unsure = judge("cone-burned", "unsure leak", "no test-proper");
            assertThat(cause(doubted, "low-air").probability())
                    .isEqualTo(cause(unsure, "low-air").probability());
            assertThat(doubted.remarks()).anyMatch(r -> r.contains("taken as unsure"));
        }

        @Test
        void one_done_properly_counts_in_full() {
            Judgement proper = judge("cone-burned", "leak", "test-proper");
            Judgement unsure = judge("cone-burned", "unsure leak", "test-proper");
            assertThat(cause(proper, "low-air").probability())
                    .isGreaterThan(cause(unsure, "low-air").probability());
        }
    }

    @Nested
    class Context {
        @Test
        void a_repair_turns_the_class_and_raises_its_odds_with_the_reason() {
            Judgement judgement = judge("cone-burned", "repaired");
            RankedCause lowAir = cause(judgement, "low-air");
            assertThat(lowAir.classId()).isEqualTo("assembly");
            assertThat(lowAir.probability())
                    .isGreaterThan(cause(judge("cone-burned"), "low-air").probability());
            assertThat(judgement.changes()).anyMatch(c -> c.sentence().contains("Suspect the repair."));
        }

        @Test
        void no_repair_changes_nothing() {
            Judgement judgement = judge("cone-burned", "no repaired");
            assertThat(cause(judgement, "low-air").classId()).isEqualTo("maintenance");
            assertThat(judgement.changes()).isEmpty();
        }

        @Test
        void a_circumstance_can_act_on_one_cause() {
            assertThat(judge("hubs-scored", "towed").changes())
                    .anyMatch(c ->
                            c.subject().equals("exclusion-habit") && c.finding().equals("towed"));
            assertThat(judge("hubs-scored", "unsure towed").changes()).isEmpty();
        }

        @Test
        void a_layout_rules_out_what_it_has_not_got() {
            CaseFile file = SmallTrade.sheet("split-slow", "cone-burned")
                    .gearbox(SmallTrade.withoutSplitter())
                    .toCaseFile();
            Judgement judgement = DIAGNOSIS.judge(file);
            assertThat(judgement.causes()).extracting(RankedCause::id).doesNotContain("splitter-slow");
            assertThat(judgement.contradictions()).singleElement().satisfies(c -> assertThat(c.findings())
                    .containsExactly("split-slow"));
            assertThat(judge("split-slow").causes()).extracting(RankedCause::id).contains("splitter-slow");
        }
    }

    @Nested
    class Consistency {
        @Test
        void findings_that_cannot_stand_together_contradict() {
            assertThat(judge("hubs-scored", "hubs-sound").contradictions()).hasSize(1);
            assertThat(judge("hubs-scored", "no hubs-sound").contradictions()).isEmpty();
        }

        @Test
        void what_must_follow_and_does_not_contradicts() {
            assertThat(judge("outlet-low", "no test-proper").contradictions())
                    .singleElement()
                    .satisfies(c -> assertThat(c.findings()).containsExactly("outlet-low", "test-proper"));
            assertThat(judge("no outlet-low", "no test-proper").contradictions())
                    .isEmpty();
        }

        @Test
        void no_verdict_leans_on_contradicted_evidence() {
            assertThat(judge("towed", "hubs-scored", "hubs-sound").verdict().isDetermined())
                    .isFalse();
            assertThat(judge("towed", "hubs-scored").verdict().classId()).isEqualTo("towing-transport");
        }
    }

    @Nested
    class BlameGuard {
        @Test
        void no_habit_is_concluded_without_a_specific_finding() {
            Judgement judgement = judge("cone-burned", "no outlet-low", "no leak");
            assertThat(cause(judgement, "habit").probability()).isGreaterThan(Thresholds.CONCLUDED);
            assertThat(judgement.verdict().isDetermined()).isFalse();
            assertThat(cause(judgement, "habit").heldBack()).anyMatch(h -> h.contains("only this would explain"));
        }

        @Test
        void with_the_specific_finding_and_the_look_alike_ruled_out_it_may_be() {
            Judgement judgement = judge("cone-burned", "no outlet-low", "no leak", "log-shows-it");
            assertThat(judgement.verdict().classId()).isEqualTo("driver-habit");
            assertThat(judgement.verdict().sentence()).startsWith("The evidence is consistent with");
        }

        @Test
        void a_look_alike_still_open_holds_it_back() {
            Judgement judgement = judge("cone-burned", "log-shows-it", "outlet-low");
            assertThat(cause(judgement, "habit").heldBack()).anyMatch(h -> h.contains("still open"));
            assertThat(judgement.verdict().classId()).isNotEqualTo("driver-habit");
        }

        @Test
        void a_habit_by_exclusion_stands_only_when_the_rest_is_proved_good() {
            assertThat(judge("hubs-scored", "no towed").verdict().isDetermined())
                    .isFalse();
            assertThat(judge("hubs-scored", "no towed", "no outlet-low")
                            .verdict()
                            .classId())
                    .isEqualTo("driver-habit");
        }

        @Test
        void any_open_contradiction_holds_blame_back() {
            Judgement judgement =
                    judge("cone-burned", "no outlet-low", "no leak", "log-shows-it", "hubs-scored", "hubs-sound");
            assertThat(judgement.verdict().isDetermined()).isFalse();
        }
    }

    @Nested
    class Advice {
        @Test
        void repair_notes_and_coaching_go_with_a_likely_cause() {
            Judgement judgement = judge("cone-burned", "no outlet-low", "no leak", "log-shows-it");
            assertThat(judgement.advice().repair())
                    .extracting(AdviceGiven.Piece::text)
                    .contains("Replace the cone.");
            assertThat(judgement.advice().coaching()).singleElement().satisfies(piece -> assertThat(piece.why())
                    .doesNotContain("general reminder"));
            assertThat(judgement.advice().cautions())
                    .extracting(AdviceGiven.Piece::id)
                    .contains("chocks");
        }

        @Test
        void coaching_for_a_habit_held_back_says_nothing_about_the_driver() {
            Judgement judgement = judge("cone-burned", "no outlet-low", "no leak");
            assertThat(judgement.advice().coaching()).singleElement().satisfies(piece -> assertThat(piece.why())
                    .contains("nothing is said about this driver"));
        }

        @Test
        void towing_reminders_come_only_where_towing_may_have_done_it() {
            assertThat(judge("hubs-scored", "towed").advice().towing()).hasSize(1);
            assertThat(judge("cone-burned", "outlet-low").advice().towing()).isEmpty();
        }

        @Test
        void what_was_found_calls_for_its_caution_first_whatever_the_cause() {
            AdviceGiven.Piece first = judge("cone-burned", "log-shows-it", "leak")
                    .advice()
                    .cautions()
                    .get(0);
            assertThat(first.id()).isEqualTo("stands-still");
            assertThat(first.why()).contains("\"Leak\"");
            assertThat(cautions("unsure leak")).contains("stands-still");
        }

        @Test
        void what_was_found_sound_calls_for_none() {
            assertThat(cautions("cone-burned", "log-shows-it", "no leak")).doesNotContain("stands-still");
        }

        @Test
        void a_check_shows_the_cautions_of_its_place_and_its_own() {
            assertThat(judge("cone-burned").nextChecks())
                    .filteredOn(check -> check.finding().equals("leak"))
                    .singleElement()
                    .satisfies(check -> assertThat(check.cautions()).containsExactly("goggles"));
        }

        private List<String> cautions(String... findings) {
            return judge(findings).advice().cautions().stream()
                    .map(AdviceGiven.Piece::id)
                    .toList();
        }

        @Test
        void two_likely_causes_of_which_one_breeds_the_other_raise_the_question_what_came_first() {
            assertThat(judge("outlet-low", "hubs-scored", "towed").remarks()).anyMatch(r -> r.contains("came first"));
            assertThat(judge("outlet-low", "cone-burned").remarks()).isEmpty();
        }
    }

    @Nested
    class TruthMaintenance {
        @Test
        void what_followed_from_a_finding_goes_with_it() {
            try (OpenCase open = DIAGNOSIS.open(SmallTrade.caseWith("cone-burned"))) {
                Judgement before = open.judgement();
                open.report("repaired", FindingState.PRESENT);
                Judgement with = open.judgement();
                open.report("repaired", FindingState.NOT_LOOKED_AT);
                Judgement after = open.judgement();

                assertThat(cause(with, "low-air").probability())
                        .isGreaterThan(cause(before, "low-air").probability());
                assertThat(after).isEqualTo(before);
            }
        }
    }
}
