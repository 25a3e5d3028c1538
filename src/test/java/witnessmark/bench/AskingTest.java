package witnessmark.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.knowledge.search.FindEntries;

/**
 * A whole interview with a technician who knows what the case says ends with no class where the whole case gives none: parts of
 * two boxes in one bin, a clutch set before its free travel was measured, two sheets of one day that disagree. Common
 * practice, no source.
 */
class AskingTest {
    private static final Path CASES = Path.of("src", "test", "resources", "witnessmark");
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

    @ParameterizedTest
    @ValueSource(
            strings = {
                "harbour-cases/e26-ring-from-which-box.yaml",
                "ferry-cases/g27-burned-clutch-set-first.yaml",
                "ferry-cases/g37-brake-bites-early-and-late.yaml"
            })
    void what_takes_a_class_away_is_asked_before_one_is_left_standing(String file) throws IOException {
        var document = new CaseReader().read(CASES.resolve(file));
        KnownAnswers truth = new KnownAnswers(
                document,
                DIAGNOSIS.knowledge(),
                new FindEntries(DIAGNOSIS.knowledge()),
                DIAGNOSIS.judge(document.present()).verdict());

        assertThat(new Asking(DIAGNOSIS, truth).interview().end().last().isDetermined())
                .isFalse();
    }
}
