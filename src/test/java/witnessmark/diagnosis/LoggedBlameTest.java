package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence.SourceFile;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.logged.LoggedEvidence;
import witnessmark.casefile.logged.WeighOnce;
import witnessmark.diagnosis.fact.HoldReason;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.LogRecord.Tally;

/** A log may carry a conclusion about a person only where it covers enough to show a habit. */
class LoggedBlameTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    private static final String STARTS = "log-standing-start-high-range";

    /** The shipped case of a mainshaft twisted by starts in high range, what its log said left out. */
    private static CaseSheet twisted() {
        CaseFile file = ShippedKnowledge.samples().stream()
                .map(d -> d.present())
                .filter(f -> f.id().text().equals("standing-starts-in-high-range"))
                .findFirst()
                .orElseThrow();
        CaseSheet sheet = new CaseSheet(file);
        sheet.clearFinding(STARTS);
        return sheet;
    }

    private static CaseFile logged(long count, double hours, double fitting, String... doubts) {
        LogRecord record = new LogRecord(
                List.of(),
                Optional.empty(),
                40 * hours,
                hours,
                0.9 * hours,
                0.8 * hours,
                0.8 * hours * fitting,
                0,
                Map.of(STARTS, new Tally(count, 0.95 * count, 12 * hours)),
                List.of(doubts));
        return twisted()
                .evidence(LoggedEvidence.of(
                        "log-a",
                        Map.of(),
                        List.of(new SourceFile("a.csv", "0".repeat(64))),
                        record,
                        List.of(),
                        new WeighOnce()))
                .toCaseFile();
    }

    private static Judgement with(long count, double hours, double fitting, String... doubts) {
        return DIAGNOSIS.judge(logged(count, hours, fitting, doubts));
    }

    @Test
    void many_starts_in_high_range_over_many_hours_are_not_called_thin() {
        assertThat(with(9, 6, 0.97).causes().get(0).id()).isEqualTo("high-gear-start");
        assertThat(with(9, 6, 0.97).causes().get(0).reasons()).noneMatch(HoldReason.TooLittleLogged.class::isInstance);
    }

    @Test
    void the_same_weight_from_one_start_or_a_few_minutes_or_a_log_in_doubt_blames_nobody() {
        assertThat(with(1, 1, 0.97).verdict().classId()).isNotEqualTo("driver-habit");
        assertThat(with(3, 0.2, 0.97).verdict().classId()).isNotEqualTo("driver-habit");
        assertThat(with(9, 6, 0.5).verdict().classId()).isNotEqualTo("driver-habit");
        assertThat(with(9, 6, 0.97, "its odometer reads 9000 km").verdict().classId())
                .isNotEqualTo("driver-habit");
    }

    @Test
    void what_holds_the_conclusion_back_is_said() {
        assertThat(heldBack(with(1, 1, 0.97))).anyMatch(why -> why.endsWith("seen once; a habit shows again"));
        assertThat(heldBack(with(3, 0.2, 0.97)))
                .anyMatch(why -> why.endsWith("the logs cover 12 min; add logs of more trips"));
    }

    @Test
    void a_log_that_covers_enough_or_what_the_technician_read_from_it_himself_is_not_called_thin() {
        assertThat(heldBack(with(9, 6, 0.97))).noneMatch(why -> why.contains("rests on too little"));
        CaseFile ticked = new CaseSheet(logged(1, 1, 0.97))
                .finding(new FindingEntry(STARTS, FindingState.PRESENT))
                .toCaseFile();
        assertThat(heldBack(DIAGNOSIS.judge(ticked))).noneMatch(why -> why.contains("rests on too little"));
    }

    private static List<String> heldBack(Judgement judgement) {
        return judgement.causes().stream().flatMap(c -> c.heldBack().stream()).toList();
    }
}
