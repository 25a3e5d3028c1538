package witnessmark.interview;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.knowledge.AccessStep;
import witnessmark.knowledge.Before;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;

/** No check is asked that the state of the unit, as it came or as the work left it, does not allow. Common practice, no source. */
class UnitStateTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    private static final KnowledgeBase KNOWLEDGE = DIAGNOSIS.knowledge();
    private static final int MANY = 80;

    private final InMemory notebook = new InMemory();

    private Interview atTheChecks(String state, String symptom) {
        Interview interview = new Interview(DIAGNOSIS, notebook);
        while (interview.stage() != Stage.UNIT_STATE) {
            interview.tell("");
        }
        interview.tell(state);
        interview.tell("", List.of(symptom));
        interview.tell("");
        return interview;
    }

    /** The findings asked, each answered with no, until the interview ends. */
    private static List<Finding> asked(Interview interview) {
        List<Finding> asked = new ArrayList<>();
        for (var q = interview.question(); q.isPresent() && asked.size() < MANY; q = interview.question()) {
            asked.add(q.get().finding());
            interview.answer(new FindingEntry(q.get().finding().id(), FindingState.ABSENT));
        }
        return asked;
    }

    private static AccessStep place(Finding finding) {
        return KNOWLEDGE.access().get(finding.access());
    }

    @ParameterizedTest
    @CsvSource({
        "stands, DRIVES",
        "bench, IN_TRUCK",
        "front-apart, IN_TRUCK",
        "rear-apart, IN_TRUCK",
        "all-apart, IN_TRUCK"
    })
    void nothing_is_asked_that_the_unit_as_it_came_cannot_do(String state, AccessStep.Use ended) {
        assertThat(asked(atTheChecks(state, "slips-out-under-pull")))
                .isNotEmpty()
                .noneSatisfy(f -> assertThat(place(f).needs())
                        .hasValueSatisfying(n -> assertThat(ended.endsToo(n)).isTrue()));
    }

    /** A unit that is out but not yet apart is still bolted together: its joint is looked at before it is parted. */
    @Test
    void the_joint_of_a_unit_that_is_not_apart_is_looked_at_before_it_is_opened() {
        List<Finding> asked = asked(atTheChecks("bench", "range-slips-out"));
        List<String> ids = asked.stream().map(Finding::id).toList();
        List<String> inside = asked.stream()
                .filter(f -> KNOWLEDGE.wayTo(f.access()).stream().anyMatch(s -> s.id().equals("auxiliary-off")))
                .map(Finding::id)
                .toList();

        assertThat(ids).contains("aux-bolts-loose");
        assertThat(inside).isNotEmpty();
        assertThat(ids.indexOf("aux-bolts-loose")).isLessThan(ids.indexOf(inside.get(0)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"slips-out-under-pull", "range-grinds-into-low", "noise-all-gears-engine-speed"})
    void nothing_is_asked_that_an_earlier_check_took_away(String symptom) {
        Set<String> gone = new HashSet<>();
        Lost lost = new Lost(KNOWLEDGE, new witnessmark.planner.PlanChecks(KNOWLEDGE.access()));
        for (Finding finding : asked(atTheChecks("runs", symptom))) {
            assertThat(gone).doesNotContain(finding.id());
            gone.addAll(lost.byGoingTo(finding.access()));
        }
    }

    /** Common practice, no source: nobody is under a truck while its gearbox lies on a bench. */
    @ParameterizedTest
    @CsvSource({"runs, true", "bench, false", "front-apart, false", "rear-apart, false", "all-apart, false"})
    void no_caution_about_the_truck_is_said_at_a_gearbox_that_came_out_of_it(String state, boolean said) {
        Interview interview = atTheChecks(state, "slips-out-under-pull");
        List<String> cautions = new ArrayList<>();
        for (int i = 0; i < MANY && interview.question().isPresent(); i++) {
            Question question = interview.question().orElseThrow();
            if (KNOWLEDGE.wayTo(question.check().access()).stream().anyMatch(AccessStep::onUnit)) {
                cautions.addAll(question.cautions());
            }
            interview.answer(new FindingEntry(question.finding().id(), FindingState.ABSENT));
        }

        assertThat(cautions).isNotEmpty();
        assertThat(cautions.contains("chock-wheels")).isEqualTo(said);
        assertThat(cautions.stream().anyMatch(c -> KNOWLEDGE.cautions().get(c).ofTruck()))
                .isEqualTo(said);
    }

    @ParameterizedTest
    @ValueSource(strings = {"slips-out-under-pull", "range-slips-out"})
    void what_is_lost_is_named(String symptom) {
        Interview interview = atTheChecks("all-apart", symptom);

        assertThat(interview.lost()).isNotEmpty();
        assertThat(interview.plan().stream().flatMap(v -> v.checks().stream())).noneMatch(interview.lost()::contains);
    }

    @ParameterizedTest
    @ValueSource(strings = {"loss-of-drive", "locked-in-gear", "locked-in-two-gears", "axle-turns-free"})
    void a_truck_that_was_found_without_drive_is_not_driven(String found) {
        assertThat(asked(atTheChecks("runs", found))).isNotEmpty().noneSatisfy(f -> assertThat(place(f).needs())
                .contains(AccessStep.Use.DRIVES));
    }

    @Test
    void what_a_road_test_would_tell_of_a_lost_drive_is_named_as_lost() {
        Interview interview = atTheChecks("runs", "loss-of-drive");

        assertThat(interview.lost()).map(NextCheck::access).contains("road-test");
    }

    @Test
    void a_lost_drive_that_is_denied_leaves_the_road_test() {
        Interview interview = atTheChecks("runs", "noise-road-speed");
        interview.answer(new FindingEntry("loss-of-drive", FindingState.ABSENT));

        assertThat(interview.lost()).map(NextCheck::access).doesNotContain("road-test", "yard");
    }

    /** Common practice, no source: soap and linkage are tried before the part that they are on comes off. */
    @ParameterizedTest
    @CsvSource({
        "range-grinds-into-low, only-with-one-driver, auxiliary-off, bubbles-at-range-cover",
        "hard-shift-one-gear, only-with-one-driver, shift-housing-off, linkage-binds"
    })
    void what_a_cause_in_question_may_wait_for_is_looked_at_before_the_work_that_ends_it(
            String symptom, String also, String work, String look) {
        Interview interview = atTheChecks("runs", symptom);
        interview.answer(new FindingEntry(also, FindingState.PRESENT));
        List<String> asked = new ArrayList<>();
        boolean open = false;
        for (var q = interview.question(); q.isPresent() && !open; q = interview.question()) {
            Finding finding = q.get().finding();
            open = KNOWLEDGE.wayTo(finding.access()).stream()
                    .anyMatch(step -> step.id().equals(work));
            asked.add(finding.id());
            interview.answer(new FindingEntry(finding.id(), FindingState.ABSENT));
        }

        assertThat(open).isTrue();
        assertThat(asked).contains(look);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "before-drain",
                "before-out",
                "before-shift-tower",
                "before-shift-housing",
                "before-range-cover",
                "before-auxiliary",
                "before-splitter-cover",
                "before-front",
                "before-wash"
            })
    void each_row_of_before_names_looks_outside_the_work_itself(String row) {
        Before before = KNOWLEDGE.befores().stream()
                .filter(b -> b.id().equals(row))
                .findFirst()
                .orElseThrow();

        assertThat(before.looks()).isNotEmpty().allSatisfy(look -> assertThat(
                        KNOWLEDGE.wayTo(KNOWLEDGE.findings().get(look).access()).stream()
                                .map(AccessStep::id))
                .doesNotContain(before.work()));
    }
}
