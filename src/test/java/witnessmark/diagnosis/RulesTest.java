package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.Teller;
import witnessmark.diagnosis.fact.HoldReason;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.Cause;

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

        /** Who cannot tell of nearly anything has told nothing: common sense, no source. */
        @Test
        void unsure_answers_weigh_a_little_while_they_are_few_and_nothing_where_they_are_many() {
            Diagnosis shipped = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
            List<String> unsure = shipped.knowledge().causes().get("low-oil").links().stream()
                    .map(Cause.Link::finding)
                    .filter(f -> !f.equals("runs-hot"))
                    .sorted()
                    .limit(Thresholds.UNSURE_THAT_WEIGH + 1)
                    .map(f -> "unsure " + f)
                    .toList();
            double bare = lowOil(shipped, List.of());
            assertThat(lowOil(shipped, unsure.subList(0, 1))).isNotEqualTo(bare);
            assertThat(lowOil(shipped, unsure.subList(0, unsure.size() - 1))).isNotEqualTo(bare);
            assertThat(lowOil(shipped, unsure)).isEqualTo(bare);
        }

        private static double lowOil(Diagnosis shipped, List<String> more) {
            List<String> all = new ArrayList<>(more);
            all.add("runs-hot");
            return cause(shipped.judge(SmallTrade.caseWith(all.toArray(String[]::new))), "low-oil")
                    .probability();
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
            Judgement judgement = judge("cone-burned", "repaired", "since-repair");
            RankedCause lowAir = cause(judgement, "low-air");
            assertThat(lowAir.classId()).isEqualTo("assembly");
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
        void a_noise_in_a_gear_in_which_the_damaged_pair_carries_no_load_contradicts() {
            assertThat(heardAndSeen("direct", "4").contradictions())
                    .singleElement()
                    .satisfies(c -> assertThat(c.why()).contains("carries no load"));
            assertThat(heardAndSeen("4", "4").contradictions()).isEmpty();
            assertThat(heardAndSeen("3", "head").contradictions()).isEmpty();
        }

        private static Judgement heardAndSeen(String gear, String pair) {
            Optional<String> in = Optional.of(gear);
            Optional<String> on = Optional.of(pair);
            return DIAGNOSIS.judge(SmallTrade.sheet()
                    .finding(new FindingEntry("grinds", FindingState.PRESENT, "", Optional.empty(), in))
                    .finding(new FindingEntry("hubs-scored", FindingState.PRESENT, "", Optional.empty(), on))
                    .toCaseFile());
        }

        @Test
        void no_verdict_leans_on_contradicted_evidence() {
            assertThat(judge("towed", "hubs-scored", "hubs-sound").verdict().isDetermined())
                    .isFalse();
            assertThat(judge("towed", "hubs-scored", "no outlet-low").verdict().pointsTo())
                    .contains("towing-transport");
        }
    }

    /** What may be concluded, and what only pointed to: each rule with a hit and a near miss. */
    @Nested
    class Guard {
        private static List<HoldReason> reasons(String cause, String... findings) {
            return cause(judge(findings), cause).reasons();
        }

        @Test
        void a_part_seen_broken_is_concluded_and_one_seen_sound_is_ruled_out() {
            Judgement broken = judge("grinds", "outlet-low");
            assertThat(broken.verdict().classId()).isEqualTo("maintenance");
            assertThat(cause(broken, "low-air").seen()).isTrue();
            assertThat(cause(broken, "low-air").probability()).isGreaterThan(0.95);
            assertThat(cause(judge("grinds", "cone-burned", "leak", "no outlet-low"), "low-air")
                            .probability())
                    .isLessThan(0.02);
        }

        @Test
        void symptoms_logs_and_tales_alone_have_no_ground() {
            assertThat(reasons("habit", "grinds", "log-shows-it", "no outlet-low"))
                    .anyMatch(HoldReason.NotLookedAt.class::isInstance);
            assertThat(reasons("habit", "grinds", "told", "no outlet-low"))
                    .anyMatch(HoldReason.NotLookedAt.class::isInstance);
            assertThat(reasons("habit", "cone-burned", "log-shows-it", "no outlet-low"))
                    .isEmpty();
        }

        @Test
        void a_mark_that_others_leave_too_is_not_called_unlooked_at() {
            assertThat(reasons("habit", "cone-burned", "told", "no outlet-low"))
                    .contains(new HoldReason.MarkAlone(List.of("cone-burned"), List.of()))
                    .noneMatch(HoldReason.NotLookedAt.class::isInstance);
            assertThat(judge("cone-burned", "told", "no outlet-low").verdict().open())
                    .anySatisfy(why -> assertThat(why).contains("others leave too", "Cone burned"));
        }

        @Test
        void a_mark_beside_a_log_concludes_a_habit_once_its_rival_was_looked_at() {
            Judgement judgement = judge("cone-burned", "log-shows-it", "no outlet-low");
            assertThat(judgement.verdict().classId()).isEqualTo("driver-habit");
            assertThat(judgement.verdict().sentence()).startsWith("The evidence is consistent with");
        }

        @Test
        void a_rival_not_looked_at_holds_back_whatever_the_log_says() {
            Judgement judgement = judge("cone-burned", "log-shows-it");
            assertThat(cause(judgement, "habit").reasons())
                    .hasOnlyElementsOfType(HoldReason.RivalOpen.class)
                    .anySatisfy(
                            r -> assertThat(((HoldReason.RivalOpen) r).looks()).containsExactly("outlet-low"));
            assertThat(judgement.verdict().isDetermined()).isFalse();
        }

        @Test
        void a_rival_seen_that_explains_every_mark_holds_back_and_one_that_does_not_stands_beside() {
            assertThat(reasons("habit", "cone-burned", "log-shows-it", "outlet-low"))
                    .anySatisfy(r -> assertThat(r)
                            .isInstanceOfSatisfying(HoldReason.RivalOpen.class, rival -> assertThat(rival.seen())
                                    .isTrue()));
            assertThat(reasons("exclusion-habit", "hubs-scored", "outlet-low"))
                    .noneMatch(HoldReason.RivalOpen.class::isInstance);
        }

        @Test
        void what_must_be_good_is_looked_at_and_a_log_does_not_waive_it() {
            assertThat(reasons("exclusion-habit", "hubs-scored", "no towed"))
                    .contains(new HoldReason.NotProvedGood("outlet-low", false));
            assertThat(reasons("exclusion-habit", "hubs-scored", "no towed", "no outlet-low"))
                    .doesNotContain(new HoldReason.NotProvedGood("outlet-low", false));
        }

        @Test
        void whose_it_is_stays_open_while_a_repair_on_record_is_not_asked_about() {
            assertThat(reasons("low-air", "outlet-low", "repaired"))
                    .contains(new HoldReason.OwnerOpen("since-repair", "assembly"));
            assertThat(reasons("low-air", "outlet-low", "repaired", "no since-repair"))
                    .noneMatch(HoldReason.OwnerOpen.class::isInstance);
            assertThat(reasons("low-air", "outlet-low")).noneMatch(HoldReason.OwnerOpen.class::isInstance);
        }

        @Test
        void two_known_circumstances_of_one_act_that_name_different_owners_leave_it_open() {
            assertThat(reasons("low-air", "outlet-low", "since-repair", "towed"))
                    .contains(new HoldReason.TwoOwners(List.of("since-repair", "towed")));
            assertThat(reasons("low-air", "outlet-low", "since-repair", "no towed"))
                    .noneMatch(HoldReason.TwoOwners.class::isInstance);
        }

        @Test
        void two_causes_of_two_owners_that_are_both_there_leave_open_what_came_of_which() {
            assertThat(reasons("tow", "grinds", "outlet-low", "hubs-scored", "towed"))
                    .anyMatch(r -> r instanceof HoldReason.OwnersBeside b
                            && b.shown()
                            && b.other().equals("low-air"));
            assertThat(reasons("tow", "grinds", "no outlet-low", "hubs-scored", "towed"))
                    .noneMatch(HoldReason.OwnersBeside.class::isInstance);
        }

        @Test
        void what_the_cause_itself_brings_about_holds_it_not_back() {
            assertThat(reasons("low-air", "grinds", "outlet-low", "hubs-scored", "towed"))
                    .noneMatch(HoldReason.OwnersBeside.class::isInstance);
        }

        @Test
        void a_person_is_not_named_while_a_mark_of_somebody_elses_is_left_unexplained() {
            assertThat(reasons("habit", "cone-burned", "log-shows-it", "outlet-low"))
                    .contains(new HoldReason.LeavesUnexplained("outlet-low"));
            assertThat(reasons("habit", "cone-burned", "log-shows-it", "no outlet-low"))
                    .isEmpty();
        }

        @Test
        void two_causes_that_have_nothing_in_common_are_each_the_answer_to_a_complaint_of_their_own() {
            String[] both = {"grinds", "outlet-low", "since-repair", "no towed", "split-slow", "rattles"};
            assertThat(cause(judge(both), "splitter-slow").probability()).isGreaterThan(Thresholds.CONCLUDED);
            assertThat(cause(judge(both), "low-air").classId()).isEqualTo("assembly");
            assertThat(reasons("low-air", both)).noneMatch(HoldReason.OwnersBeside.class::isInstance);
        }

        @Test
        void evidence_that_may_be_of_another_unit_concludes_nothing() {
            assertThat(judge("outlet-low", "serial-differs").verdict().standing())
                    .isEqualTo(Verdict.Standing.UNDETERMINED);
            assertThat(judge("outlet-low", "no serial-differs").verdict().isDetermined())
                    .isTrue();
        }

        @Test
        void a_part_seen_broken_that_explains_nothing_is_said_so() {
            assertThat(reasons("low-air", "outlet-low", "rattles"))
                    .contains(new HoldReason.ExplainsNothing(List.of("rattles")));
            assertThat(reasons("low-air", "outlet-low", "grinds")).isEmpty();
            assertThat(judge("outlet-low", "grinds").parts()).singleElement().satisfies(part -> assertThat(
                            part.explains())
                    .singleElement()
                    .satisfies(e -> assertThat(e.probability()).isGreaterThan(Thresholds.EXPLAINS)));
        }

        @Test
        void what_was_spoiled_before_the_look_counts_as_unsure() {
            Judgement judgement = judge("cone-burned", "outlet-low", "gauge-broken");
            assertThat(cause(judgement, "low-air").seen()).isFalse();
            assertThat(judgement.remarks()).anyMatch(r -> r.contains("cannot be read any more"));
            assertThat(cause(judge("cone-burned", "outlet-low", "no gauge-broken"), "low-air")
                            .seen())
                    .isTrue();
        }

        @Test
        void a_look_that_can_no_longer_be_made_is_named_as_lost_and_not_asked_for() {
            assertThat(reasons("exclusion-habit", "hubs-scored", "no towed", "gauge-broken"))
                    .contains(new HoldReason.LookLost(List.of("outlet-low"), "gauge-broken"));
            assertThat(reasons("exclusion-habit", "hubs-scored", "no towed", "no gauge-broken"))
                    .contains(new HoldReason.NotProvedGood("outlet-low", false));
            assertThat(judge("cone-burned", "gauge-broken").nextChecks())
                    .extracting(NextCheck::finding)
                    .doesNotContain("outlet-low");
            assertThat(judge("cone-burned", "no gauge-broken").nextChecks())
                    .extracting(NextCheck::finding)
                    .contains("outlet-low");
        }

        @Test
        void what_was_renewed_before_the_look_proves_nothing_good_but_broken_it_is_broken() {
            assertThat(reasons("exclusion-habit", "hubs-scored", "no towed", "no outlet-low", "regulator-new"))
                    .contains(new HoldReason.LookLost(List.of("outlet-low"), "regulator-new"));
            assertThat(reasons("exclusion-habit", "hubs-scored", "no towed", "no outlet-low", "no regulator-new"))
                    .isEmpty();
            assertThat(cause(judge("cone-burned", "outlet-low", "regulator-new"), "low-air")
                            .seen())
                    .isTrue();
        }

        @Test
        void what_was_renewed_before_it_was_measured_proves_nothing_good() {
            Measurement good = SmallTrade.outletBar(4.0, 3.9, 4.3);
            assertThat(cause(judge(good, "hubs-scored", "no towed", "regulator-new"), "exclusion-habit")
                            .reasons())
                    .contains(new HoldReason.LookLost(List.of("outlet-low"), "regulator-new"));
            assertThat(cause(judge(good, "hubs-scored", "no towed", "no regulator-new"), "exclusion-habit")
                            .reasons())
                    .isEmpty();
            assertThat(cause(judge(SmallTrade.outletBar(3.0, 3.9, 4.3), "cone-burned", "regulator-new"), "low-air")
                            .seen())
                    .isTrue();
        }

        @Test
        void nobody_is_named_on_parts_sound_since_a_repair_until_it_is_asked_what_was_renewed() {
            assertThat(reasons("exclusion-habit", "hubs-scored", "no towed", "no outlet-low", "repaired"))
                    .containsExactly(new HoldReason.RenewalOpen("outlet-low", "regulator-new"));
            assertThat(reasons(
                            "exclusion-habit",
                            "hubs-scored",
                            "no towed",
                            "no outlet-low",
                            "repaired",
                            "no regulator-new"))
                    .isEmpty();
            assertThat(reasons("exclusion-habit", "hubs-scored", "no towed", "no outlet-low"))
                    .isEmpty();
        }

        @Test
        void what_must_be_good_and_was_found_bad_is_said_and_takes_the_direction_from_a_person() {
            assertThat(new HoldReason.NotProvedGood("leak", true).leavesNoDirection(true))
                    .isTrue();
            assertThat(new HoldReason.NotProvedGood("leak", true).leavesNoDirection(false))
                    .isFalse();
            assertThat(new HoldReason.NotProvedGood("leak", false).leavesNoDirection(true))
                    .isFalse();
        }

        @Test
        void a_concluded_cause_says_which_marks_it_does_not_explain() {
            assertThat(judge("outlet-low", "grinds", "hubs-scored").verdict().open())
                    .contains("It does not explain: \"Hubs scored\".");
            assertThat(judge("outlet-low", "grinds", "cone-burned").verdict().open())
                    .noneMatch(o -> o.startsWith("It does not explain"));
        }

        @Test
        void a_log_of_another_truck_weighs_nothing() {
            assertThat(cause(judge("cone-burned", "log-shows-it", "other-truck"), "habit")
                            .probability())
                    .isLessThan(cause(judge("cone-burned", "log-shows-it", "no other-truck"), "habit")
                            .probability());
            assertThat(judge("cone-burned", "log-shows-it", "other-truck").remarks())
                    .anyMatch(r -> r.contains("cannot be read any more"));
        }

        @Test
        void what_needs_an_explanation_contradicts_where_every_one_was_looked_for_and_is_not_there() {
            assertThat(judge("leak", "no outlet-low", "no grinds").contradictions())
                    .extracting(c -> c.why())
                    .contains("A leak lowers the outlet or grinds.");
            assertThat(judge("leak", "no outlet-low").contradictions()).isEmpty();
            assertThat(judge("leak", "no outlet-low", "grinds").contradictions())
                    .isEmpty();
        }

        @Test
        void who_decided_it_is_said_only_beside_a_cause_that_names_people() {
            assertThat(judge("cone-burned", "log-shows-it", "no outlet-low", "ordered")
                            .remarks())
                    .contains("Speak with whoever ordered it.");
            assertThat(judge("outlet-low", "ordered").remarks()).doesNotContain("Speak with whoever ordered it.");
        }

        @Test
        void any_open_contradiction_holds_blame_back() {
            assertThat(reasons("habit", "cone-burned", "log-shows-it", "no outlet-low", "hubs-scored", "hubs-sound"))
                    .anyMatch(HoldReason.Contradicted.class::isInstance);
        }
    }

    @Nested
    class OneFactCountsOnce {
        @Test
        void the_same_act_told_again_changes_nothing() {
            assertThat(judge("cone-burned", "log-shows-it", "told").causes())
                    .extracting(RankedCause::probability)
                    .containsExactlyElementsOf(judge("cone-burned", "log-shows-it").causes().stream()
                            .map(RankedCause::probability)
                            .toList());
        }

        @Test
        void the_other_answer_to_a_question_changes_nothing_and_is_not_asked() {
            Judgement one = judge("rattles-cold");
            Judgement both = judge("rattles-cold", "no rattles");
            assertThat(both.causes())
                    .extracting(RankedCause::probability)
                    .isEqualTo(
                            one.causes().stream().map(RankedCause::probability).toList());
            assertThat(one.nextChecks()).extracting(NextCheck::finding).doesNotContain("rattles");
        }

        @Test
        void what_somebody_told_is_no_look_and_what_he_denied_moves_nobody() {
            FindingEntry told = new FindingEntry(
                    "outlet-low", FindingState.PRESENT, "", Optional.of(Teller.DRIVER), Optional.empty());
            FindingEntry denied =
                    new FindingEntry("towed", FindingState.ABSENT, "", Optional.of(Teller.FLEET), Optional.empty());
            Judgement silent = judge("grinds", "hubs-scored");
            Judgement tale = DIAGNOSIS.judge(
                    SmallTrade.sheet("grinds", "hubs-scored").finding(told).toCaseFile());
            assertThat(cause(tale, "low-air").probability())
                    .isGreaterThan(cause(silent, "low-air").probability());
            assertThat(cause(tale, "low-air").seen()).isFalse();
            assertThat(tale.verdict().isDetermined()).isFalse();
            assertThat(DIAGNOSIS.judge(SmallTrade.sheet("grinds", "hubs-scored")
                            .finding(denied)
                            .toCaseFile()))
                    .isEqualTo(silent);
        }

        @Test
        void a_denial_weighs_nothing() {
            assertThat(judge("cone-burned", "no told").causes())
                    .extracting(RankedCause::probability)
                    .isEqualTo(judge("cone-burned").causes().stream()
                            .map(RankedCause::probability)
                            .toList());
            assertThat(cause(judge("cone-burned", "told"), "habit").probability())
                    .isGreaterThan(cause(judge("cone-burned"), "habit").probability());
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
                open.report("since-repair", FindingState.PRESENT);
                Judgement with = open.judgement();
                open.report("since-repair", FindingState.NOT_LOOKED_AT);
                Judgement after = open.judgement();

                assertThat(cause(with, "low-air").classId()).isEqualTo("assembly");
                assertThat(after).isEqualTo(before);
            }
        }
    }
}
