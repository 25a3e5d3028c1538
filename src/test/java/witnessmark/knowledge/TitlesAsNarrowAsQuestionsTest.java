package witnessmark.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** People tick titles: a title must not say yes to more than its question asks. */
class TitlesAsNarrowAsQuestionsTest {
    private static final List<String> NARROW = List.of(
            "several gears", "sister trucks", "heavily", "one side only", "of several drivers", "most used gears");

    @Test
    void what_narrows_a_question_narrows_its_title() throws IOException {
        KnowledgeBase knowledge = new KnowledgeLoader().load(List.of(KnowledgeFolder.files(Path.of("knowledge-base"))));

        List<String> wide = knowledge.findings().values().stream()
                .filter(f -> f.madeOf().isEmpty())
                .flatMap(f -> NARROW.stream()
                        .filter(word -> mainClause(f.ask()).contains(word)
                                && !f.title().toLowerCase(Locale.ROOT).contains(word))
                        .map(word -> f.id() + ": " + word))
                .toList();

        assertThat(wide).isEmpty();
    }

    /** Without what stands in brackets, and in small letters. */
    private static String mainClause(String ask) {
        return ask.replaceAll("\\([^)]*\\)", "").toLowerCase(Locale.ROOT);
    }
}
