package witnessmark.document.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.document.drawing.DrawGearbox;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Layout.Fitted;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.language.Texts;

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

    private static Set<String> parts() {
        return KNOWLEDGE.findings().values().stream().map(Finding::part).collect(TreeSet::new, Set::add, Set::addAll);
    }

    @Test
    void every_part_of_the_box_that_a_finding_names_is_drawn() {
        assertThat(parts().stream().filter(p -> !DrawGearbox.shows(WITH_EVERYTHING, p)))
                .as("what is no part, and what is no part of the box")
                .containsExactlyInAnyOrder("", "brakes");
    }

    @ParameterizedTest
    @EnumSource
    void every_part_has_its_word(Language language) {
        Texts words = Texts.of("document", language);
        assertThat(parts().stream().filter(p -> DrawGearbox.shows(WITH_EVERYTHING, p)))
                .allSatisfy(p -> assertThat(words.text("part." + p)).isNotBlank());
    }

    @Test
    void steps_against_a_return_are_told_for_classes_that_there_are() {
        Stream<String> classes = KNOWLEDGE.vocabulary().classes().stream().map(c -> c.id());
        assertThat(classes).containsAll(Prevention.classes());
    }
}
