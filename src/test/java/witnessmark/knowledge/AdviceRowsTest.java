package witnessmark.knowledge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What a sheet or a card says, and in which order, are rows of advice.yaml; what they name must exist. */
class AdviceRowsTest {
    private static List<KnowledgeFile> shipped;
    private static KnowledgeBase knowledge;

    @BeforeAll
    static void load() throws IOException {
        shipped = KnowledgeFolder.files(Path.of("knowledge-base"));
        knowledge = new KnowledgeLoader().load(List.of(shipped));
    }

    private static KnowledgeBase with(String rows) {
        return new KnowledgeLoader()
                .load(List.of(
                        shipped, List.of(new KnowledgeFile("advice.yaml", rows.getBytes(StandardCharsets.UTF_8)))));
    }

    @ParameterizedTest
    @EnumSource
    void every_way_of_moving_has_a_caution_and_a_reminder_of_its_own(TowWay way) {
        assertThat(knowledge.towCautions()).anyMatch(c -> c.ways().contains(way) && !c.ifAdvised());
        assertThat(knowledge.towing().values()).anyMatch(a -> a.ways().equals(List.of(way)));
    }

    @Test
    void each_place_on_the_card_is_taken_once_and_none_is_free() {
        List<Integer> turns = knowledge.coaching().values().stream()
                .flatMapToInt(a -> a.turn().stream())
                .sorted()
                .boxed()
                .toList();
        assertThat(turns)
                .isNotEmpty()
                .isEqualTo(IntStream.rangeClosed(1, turns.size()).boxed().toList());
    }

    @Test
    void a_point_is_about_what_its_words_name() {
        assertThat(knowledge.coaching().values())
                .filteredOn(a -> a.english().matches("(?is).*\\b(low|high) range\\b.*|.*\\brange shift\\b.*"))
                .filteredOn(a -> a.about().isEmpty())
                .extracting(CoachingAdvice::id)
                .containsExactly("start-gear-right"); // of use in a gearbox without range too
    }

    @Test
    void a_reminder_of_a_site_that_names_no_way_belongs_to_all() {
        KnowledgeBase site = with("towing:\n  - { id: yard-gate, en: Gate, es: Portón }\n");
        assertThat(site.towing().get("yard-gate").ways()).containsExactly(TowWay.values());
    }

    @Nested
    class Refused {
        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    "towing-cautions: [{ caution: chock-whels }]"
                            + "|no caution 'chock-whels' is known|did you mean 'chock-wheels'?",
                    "towing: [{ id: a, en: A, es: A, ways: [flown] }]|ways: 'flown' is not known|use one of hauled",
                    "coaching: [{ id: a, en: A, es: A, figures: [grade] }]|figures: 'grade' is not known|use one of",
                    "coaching: [{ id: a, en: A, es: A, about: [retarder] }]"
                            + "|about: 'retarder' is not known|use one of splitter, range, power-take-off",
                    "coaching: [{ id: a, en: A, es: A, turn: 1.5 }]|turn is no place on the card|whole number from 1",
                    "coaching: [{ id: a, en: A, es: A, turn: 0 }]|turn is no place on the card|whole number from 1"
                })
        void what_is_not_known(String rows, String what, String mend) {
            assertThatThrownBy(() -> with(rows)).hasMessageContaining(what).hasMessageContaining(mend);
        }
    }
}
