package witnessmark.interview;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.gearbox.Layout;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.search.FindEntries;

/** The list offered for a complaint holds what a foreman would have on it. Common practice, no source. */
class ComplaintsTest {
    private static final KnowledgeBase KNOWLEDGE = ShippedKnowledge.load();
    private static final Complaints COMPLAINTS =
            new Complaints(KNOWLEDGE, new FindEntries(KNOWLEDGE), Layout.unknown());

    @ParameterizedTest
    @CsvSource({
        "'no drive, engine runs free', loss-of-drive",
        "'truck does not move, engine revs', loss-of-drive",
        "'no camina el camion', loss-of-drive",
        "'clutch slips on hills', clutch-slips",
        "'grinds going into low range', range-grinds-into-low",
        "'locked in two gears', locked-in-two-gears",
        "'jumps out of 5th going downhill', slips-out-on-coast",
        "'noise in neutral goes away with the clutch down', noise-neutral-pedal-up",
        "'splitter hangs between', splitter-hangs-between"
    })
    void a_complaint_is_met_by_its_symptom_first_and_mostly_by_symptoms_after_it(String words, String symptom) {
        List<String> meant = COMPLAINTS.meantBy(words);

        assertThat(meant).hasSizeLessThanOrEqualTo(8).startsWith(symptom);
        assertThat(meant.stream().filter(ComplaintsTest::isSymptom).count()).isGreaterThanOrEqualTo(6);
    }

    @ParameterizedTest
    @CsvSource({"'clutch facing burned', clutch-facing-burned", "'oil leaking at the rear', output-seal-leaks"})
    void what_is_told_of_a_part_brings_no_symptoms_in_its_place(String words, String told) {
        assertThat(COMPLAINTS.meantBy(words)).contains(told);
    }

    private static boolean isSymptom(String finding) {
        return KNOWLEDGE.findings().get(finding).kind() == Finding.Kind.SYMPTOM;
    }
}
