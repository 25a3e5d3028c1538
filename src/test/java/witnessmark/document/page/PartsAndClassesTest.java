package witnessmark.document.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.document.drawing.GearboxPlan;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Layout.Fitted;
import witnessmark.gearbox.Units;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.knowledge.CoachingAdvice;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.truck.ReadyTrucks;

/** What the papers name by an id stands in the knowledge, and what the knowledge places is drawn. */
class PartsAndClassesTest {
    private static final KnowledgeBase KNOWLEDGE = ShippedKnowledge.load();

    private static final Layout WITH_EVERYTHING = new Layout(
            OptionalInt.of(13),
            Optional.of(Layout.RangeShift.AIR),
            Optional.of(Layout.Splitter.HIGH_ONLY),
            Optional.empty(),
            Optional.empty(),
            Optional.of(Fitted.FITTED),
            Optional.of(Fitted.FITTED),
            Optional.of(Fitted.FITTED));

    private static final GearboxPlan PLAN = new GearboxPlan(WITH_EVERYTHING, KNOWLEDGE.parts());

    @Test
    void every_part_is_drawn_but_those_of_the_truck() {
        assertThat(KNOWLEDGE.parts().keySet().stream().filter(p -> !PLAN.shows(p)))
                .containsExactly("brakes");
    }

    @Test
    void every_part_but_the_output_shaft_itself_is_named_by_a_finding() {
        Set<String> parts = new TreeSet<>(KNOWLEDGE.parts().keySet());
        KNOWLEDGE.findings().values().stream().map(Finding::part).forEach(parts::remove);
        assertThat(parts).containsExactly("output-shaft");
    }

    @Test
    void what_a_gearbox_has_not_is_not_drawn() {
        Layout plain = new Layout(
                OptionalInt.of(5),
                Optional.of(Layout.RangeShift.NONE),
                Optional.of(Layout.Splitter.NONE),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        GearboxPlan plan = new GearboxPlan(plain, KNOWLEDGE.parts());
        assertThat(KNOWLEDGE.parts().values().stream()
                        .filter(p -> p.with().isPresent())
                        .filter(p -> plan.shows(p.id())))
                .isEmpty();
        assertThat(plan.shows("countershaft")).isTrue();
    }

    @Test
    void every_figure_that_stands_beside_a_coaching_point_is_worked_out_for_some_truck() {
        Set<String> worked = new TreeSet<>();
        ReadyTrucks.names()
                .forEach(name -> worked.addAll(
                        TruckFigures.forDriver(ReadyTrucks.named(name), Language.ENGLISH, SpeedUnits.of(Units.BOTH))
                                .keySet()));
        assertThat(worked).containsAll(EnumWord.all(CoachingAdvice.Figure.class).keySet());
        assertThat(KNOWLEDGE.coaching().values().stream().flatMap(a -> a.figures().stream()))
                .contains(CoachingAdvice.Figure.values());
    }

    /** Every class but those whose advice comes with the judgement itself: coaching, towing, and what the shop owes. */
    @Test
    void steps_against_a_return_are_told_for_every_class_without_advice_of_its_own() {
        Set<String> classes = KNOWLEDGE.vocabulary().classes().stream()
                .map(c -> c.id())
                .filter(c -> KNOWLEDGE.prevention().stream()
                        .noneMatch(step -> step.classId().equals(c)))
                .collect(TreeSet::new, Set::add, Set::addAll);
        assertThat(classes).containsExactlyInAnyOrder("driver-habit", "towing-transport");
    }

    @Test
    void a_part_in_order_is_told_by_findings_that_name_one() {
        assertThat(KNOWLEDGE.findings().values().stream().filter(Finding::inOrder))
                .hasSize(4)
                .allSatisfy(f -> assertThat(f.part()).isNotEmpty());
    }
}
