package witnessmark.diagnosis.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;

/** The sample cases, whose outcomes were written from the mechanism: common practice, no source. */
class SampleCasesTest {
    private static Tally tally;

    @BeforeAll
    static void score() {
        List<CaseDocument> samples = ShippedKnowledge.samples();
        RuleBase rules = RuleBase.shipped();
        tally = new ScoreCases(new Diagnosis(rules, ShippedKnowledge.load())).score(samples);
    }

    @Test
    void there_are_enough_of_them_over_every_class() {
        assertThat(tally.cases()).hasSizeGreaterThanOrEqualTo(40);
        assertThat(tally.byVerdict()).hasSize(8);
    }

    @Test
    void nobody_is_blamed_wrongly() {
        assertThat(tally.cases()).filteredOn(Scored::wrongBlame).isEmpty();
    }

    @Test
    void each_comes_out_as_expected() {
        assertThat(tally.cases())
                .filteredOn(c -> !c.isRight())
                .extracting(Scored::caseId)
                .isEmpty();
    }
}
