package witnessmark.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import witnessmark.knowledge.search.FindEntries;
import witnessmark.knowledge.search.Hit;

/** The shipped knowledge base: whole, without weak places, and found by the words people use. */
class ShippedKnowledgeTest {
    private static final Path FOLDER = Path.of("knowledge-base");
    private static final KnowledgeBase KNOWLEDGE = load();

    private static KnowledgeBase load() {
        try {
            return new KnowledgeLoader().load(List.of(KnowledgeFolder.files(FOLDER)));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void it_covers_the_trade() {
        assertThat(KNOWLEDGE.causes()).hasSizeGreaterThanOrEqualTo(95);
        assertThat(KNOWLEDGE.findings()).hasSizeGreaterThanOrEqualTo(280);
        assertThat(new CheckKnowledge(KNOWLEDGE).causesByClass().keySet())
                .containsExactlyInAnyOrder(
                        "driver-habit",
                        "towing-transport",
                        "maintenance",
                        "assembly",
                        "part-defect",
                        "wear-out",
                        "outside-gearbox");
    }

    @Test
    void it_has_no_weak_places() {
        assertThat(new CheckKnowledge(KNOWLEDGE).weaknesses()).isEmpty();
    }

    @Test
    void its_compiled_form_says_the_same() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        new KnowledgeLoader().compile(KnowledgeFolder.files(FOLDER), new DataOutputStream(bytes));
        KnowledgeBase compiled = new KnowledgeLoader().load(ByteBuffer.wrap(bytes.toByteArray()), List.of());
        assertThat(compiled).isEqualTo(KNOWLEDGE);
    }

    @Test
    void plain_words_find_what_they_mean() {
        // Common practice, no source: what a technician would type, and what should come among the first five.
        assertFound("jumps out going uphill", "slips-out-under-pull");
        assertFound("cooked synchro", "range-cone-low-burned");
        assertFound("regulator pressure too low", "regulator-outlet-low");
        assertFound("dragged home with the wheels turning", "tow-record-wheels-down");
        assertFound("grinds when shifting down to low range", "range-grinds-into-low");
        assertFound("milky oil", "oil-emulsion");
    }

    @Test
    void words_of_no_trade_find_nothing() {
        assertThat(new FindEntries(KNOWLEDGE).find("xylophone quartet", 5)).isEmpty();
        assertThat(new FindEntries(KNOWLEDGE).find("", 5)).isEmpty();
        assertThat(new FindEntries(KNOWLEDGE).find("*:* AND (", 5)).isNotNull();
    }

    private static void assertFound(String words, String id) {
        assertThat(new FindEntries(KNOWLEDGE).find(words, 5))
                .extracting(Hit::id)
                .as(words)
                .contains(id);
    }
}
