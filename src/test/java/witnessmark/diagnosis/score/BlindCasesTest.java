package witnessmark.diagnosis.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;

/**
 * Cases that were written before the program was run on them ({@code blind-cases}, {@code fresh-cases}, {@code
 * unseen-cases}), and traps written afterwards ({@code trap-cases}). Outcomes: common practice, no source. Of {@code
 * unseen-cases} the three that could be named where nothing can be told are one opinion, kept as it was.
 */
class BlindCasesTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

    @ParameterizedTest
    @CsvSource({"blind-cases, 0.95", "fresh-cases, 0.95", "trap-cases, 0.95", "unseen-cases, 0.85"})
    void no_class_is_concluded_wrongly_and_few_are_withheld(String folder, double threeAtLeast) {
        Tally tally = new ScoreCases(DIAGNOSIS)
                .score(ShippedKnowledge.cases(Path.of("src/test/resources/witnessmark", folder)));
        int cases = tally.cases().size();
        assertThat(cases).isGreaterThan(50);
        assertThat(tally.cases())
                .filteredOn(Scored::wrongBlame)
                .extracting(Scored::caseId)
                .isEmpty();
        assertThat(tally.withinThree()).isGreaterThanOrEqualTo(Math.round(threeAtLeast * cases));
        assertThat(tally.firstRight()).isGreaterThanOrEqualTo(Math.round(0.95 * cases));
        assertThat(tally.verdictRight()).isGreaterThanOrEqualTo(Math.round(0.95 * cases));
    }
}
