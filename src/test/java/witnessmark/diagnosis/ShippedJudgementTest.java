package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;

/** What the shipped knowledge makes of plain situations. Facts of the trade: common practice, no source. */
class ShippedJudgementTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

    private static CaseFile scoredHubs() {
        return new CaseSheet(new CaseId("scored"))
                .finding(new FindingEntry("hubs-scored-several-gears", FindingState.PRESENT))
                .finding(new FindingEntry("washers-cracked", FindingState.PRESENT))
                .finding(new FindingEntry("oil-level-low", FindingState.ABSENT))
                .finding(new FindingEntry("front-countershaft-bearing-blue", FindingState.ABSENT))
                .toCaseFile();
    }

    private static double probability(Judgement judgement, String cause) {
        return judgement.causes().stream()
                .filter(c -> c.id().equals(cause))
                .mapToDouble(RankedCause::probability)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_tow_on_record_lowers_coasting_and_its_withdrawal_raises_it_again() {
        try (OpenCase open = DIAGNOSIS.open(scoredHubs())) {
            double before = probability(open.judgement(), "neutral-coast");
            open.report("tow-record-wheels-down", FindingState.PRESENT);
            double withTow = probability(open.judgement(), "neutral-coast");
            open.report("tow-record-wheels-down", FindingState.NOT_LOOKED_AT);
            double after = probability(open.judgement(), "neutral-coast");

            assertThat(withTow).isLessThan(before / 2);
            assertThat(after).isEqualTo(before);
        }
    }

    @Test
    void scored_hubs_alone_blame_nobody() {
        Judgement judgement = DIAGNOSIS.judge(scoredHubs());
        assertThat(judgement.verdict().classId()).isNotIn("driver-habit", "towing-transport");
    }

    @Test
    void low_air_lowers_the_case_for_abuse_of_the_range() {
        CaseSheet burned = new CaseSheet(new CaseId("burned"))
                .finding(new FindingEntry("range-cone-low-burned", FindingState.PRESENT))
                .finding(new FindingEntry("range-cone-high-burned", FindingState.PRESENT));
        double before = probability(DIAGNOSIS.judge(burned.toCaseFile()), "range-move-in-neutral");
        burned.finding(new FindingEntry("regulator-outlet-low", FindingState.PRESENT));
        double after = probability(DIAGNOSIS.judge(burned.toCaseFile()), "range-move-in-neutral");
        assertThat(after).isLessThan(before / 2);
    }

    @Test
    void the_order_of_the_findings_does_not_matter() {
        CaseFile one = scoredHubs();
        CaseSheet reversed = new CaseSheet(one.id());
        one.findings().values().stream()
                .sorted((a, b) -> b.finding().compareTo(a.finding()))
                .forEach(reversed::finding);
        assertThat(DIAGNOSIS.judge(reversed.toCaseFile())).isEqualTo(DIAGNOSIS.judge(one));
    }

    @Test
    void nothing_found_blames_nobody_and_tells_nothing() {
        Judgement judgement = DIAGNOSIS.judge(new CaseSheet(new CaseId("empty")).toCaseFile());
        assertThat(judgement.verdict().isDetermined()).isFalse();
        assertThat(judgement.coverage()).isZero();
        assertThat(judgement.nextChecks()).isNotEmpty();
    }
}
