package witnessmark.diagnosis.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;

/**
 * Cases that were written before the program was run on them ({@code blind-cases}, {@code fresh-cases}), and traps written afterwards
 * ({@code trap-cases}). Outcomes: common practice, no source.
 */
class BlindCasesTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

    @ParameterizedTest
    @ValueSource(strings = {"blind-cases", "fresh-cases", "trap-cases"})
    void no_class_is_concluded_wrongly_and_few_are_withheld(String folder) {
        Tally tally = new ScoreCases(DIAGNOSIS)
                .score(ShippedKnowledge.cases(Path.of("src/test/resources/witnessmark", folder)));
        int cases = tally.cases().size();
        assertThat(cases).isGreaterThan(50);
        assertThat(tally.cases())
                .filteredOn(Scored::wrongBlame)
                .extracting(Scored::caseId)
                .isEmpty();
        assertThat(tally.withinThree()).isGreaterThanOrEqualTo(Math.round(0.95 * cases));
        assertThat(tally.firstRight()).isGreaterThanOrEqualTo(Math.round(0.95 * cases));
        assertThat(tally.verdictRight()).isGreaterThanOrEqualTo(Math.round(0.95 * cases));
    }
}
