package witnessmark.casefile.logged;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.Evidence.Kind;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.casefile.yaml.CaseWriter;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.LogRecord.Tally;

/** All logs of a case are of one truck, so they are one witness. */
class LoggedTogetherTest {
    private static final String STARTS = "log-standing-start-high-range";

    private static LogRecord starts(long count, double chances) {
        return new LogRecord(
                List.of(),
                Optional.empty(),
                50,
                2,
                1.8,
                1.5,
                1.4,
                0,
                Map.of(STARTS, new Tally(count, 0.95 * count, chances)),
                List.of());
    }

    private static CaseFile with(LogRecord... records) {
        CaseSheet sheet = new CaseSheet(new CaseId("logs"));
        for (int i = 0; i < records.length; i++) {
            sheet.evidence(LoggedEvidence.of(
                    "log-" + (i + 1),
                    Map.of(),
                    List.of(new Evidence.SourceFile(
                            "trip.csv", String.valueOf(i).repeat(64))),
                    records[i],
                    List.of(),
                    new WeighOnce()));
        }
        return sheet.toCaseFile();
    }

    private static Evidence withoutCounts(String id, FindingState state, Likelihood likelihood) {
        return new Evidence(
                id, Kind.LOGGED, "", "", Map.of(), Optional.empty(), Map.of(STARTS, state), Map.of(STARTS, likelihood));
    }

    private static double factor(CaseFile file) {
        return CombinedEvidence.of(file).likelihood(STARTS).orElseThrow().factor();
    }

    @Test
    void ten_short_logs_weigh_as_the_one_long_log_that_they_are() {
        LogRecord[] tenth = new LogRecord[10];
        java.util.Arrays.fill(tenth, starts(0, 10));

        CaseFile inParts = with(tenth);
        CaseFile whole = with(starts(0, 100));

        assertThat(factor(inParts)).isCloseTo(factor(whole), within(1e-9));
        // 100 starts: (1 + 0.002 x 100) / (1 + 0.95 x 0.08 x 100)
        assertThat(factor(whole)).isCloseTo(1.2 / 8.6, within(1e-9));
        assertThat(CombinedEvidence.of(inParts).findings()).containsEntry(STARTS, FindingState.ABSENT);
    }

    @Test
    void what_each_log_leaves_open_may_show_when_they_are_added_up() {
        CaseFile one = with(starts(0, 15));
        CaseFile many = with(starts(0, 15), starts(0, 15), starts(0, 15));

        assertThat(CombinedEvidence.of(one).findings()).doesNotContainKey(STARTS);
        assertThat(CombinedEvidence.of(many).findings()).containsEntry(STARTS, FindingState.ABSENT);
    }

    @Test
    void quiet_logs_take_weight_from_the_one_with_events_instead_of_being_outvoted_by_it() {
        double alone = factor(with(starts(1, 6)));
        double diluted = factor(with(starts(1, 6), starts(0, 400)));

        assertThat(alone).isGreaterThan(10);
        assertThat(diluted).isLessThan(alone / 2);
    }

    @Test
    void the_papers_tell_what_several_logs_say_together_and_nothing_twice_of_one() {
        assertThat(together(with(starts(0, 100)))).isEmpty();
        assertThat(together(with(starts(0, 60), starts(0, 40)))).hasValueSatisfying(text -> assertThat(text)
                .contains("They could have shown and did not")
                .contains("0 x start from rest in high range in 100 starts from rest"));
    }

    @Test
    void agreeing_logs_of_an_older_case_without_counts_weigh_as_the_strongest_of_them() {
        CaseFile file = new CaseSheet(new CaseId("old"))
                .evidence(withoutCounts("log-a", FindingState.PRESENT, new Likelihood(0.95, 0.0475)))
                .evidence(withoutCounts("log-b", FindingState.PRESENT, new Likelihood(0.95, 0.19)))
                .toCaseFile();

        assertThat(factor(file)).isCloseTo(20, within(1e-9));
        assertThat(CombinedEvidence.of(file).findings()).containsEntry(STARTS, FindingState.PRESENT);
    }

    @Test
    void opposing_logs_without_counts_are_set_off() {
        CaseFile file = new CaseSheet(new CaseId("old"))
                .evidence(withoutCounts("log-a", FindingState.PRESENT, new Likelihood(0.95, 0.0475)))
                .evidence(withoutCounts("log-b", FindingState.ABSENT, new Likelihood(0.19, 0.95)))
                .toCaseFile();

        assertThat(factor(file)).isCloseTo(4, within(1e-9));
    }

    @Test
    void results_of_another_kind_still_multiply_with_those_of_the_logs() {
        CaseFile file = new CaseSheet(with(starts(0, 100)))
                .evidence(new Evidence(
                        "worked-out",
                        Kind.COMPUTED,
                        "",
                        "",
                        Map.of(),
                        Optional.empty(),
                        Map.of(STARTS, FindingState.ABSENT),
                        Map.of(STARTS, new Likelihood(0.5, 1))))
                .toCaseFile();

        assertThat(factor(file)).isCloseTo(0.5 * 1.2 / 8.6, within(1e-9));
    }

    @Test
    void the_counts_are_written_and_read_again() {
        CaseFile file = with(starts(3, 6).with(List.of("its odometer reads 9000 km")), starts(0, 40));

        String text = new CaseWriter().write(CaseDocument.of(file));
        CaseFile again = new CaseReader()
                .read("again.yaml", text.getBytes(StandardCharsets.UTF_8))
                .present();

        assertThat(again).isEqualTo(file);
        assertThat(CombinedEvidence.of(again).logs())
                .isEqualTo(CombinedEvidence.of(file).logs());
    }

    @Test
    void every_fault_of_written_counts_is_told_at_once() {
        String text =
                """
                case: faulty
                evidence:
                  log-1:
                    kind: logged
                    record: { km: -3, covered-hours: x, moving-hours: 1, telling-hours: 1, fitting-hours: 1,
                      coast-km: 0, odometer-km: [5, 4],
                      times: [{ from: yesterday, to: "2026-03-02T08:15:00Z" },
                        { from: "2026-03-02T08:15:00Z", to: "2026-03-01T08:15:00Z" }],
                      tallies: { log-clutch-riding: { count: 1, weight: 1 } } }
                """;

        assertThatThrownBy(() -> new CaseReader().read("f.yaml", text.getBytes(StandardCharsets.UTF_8)))
                .hasMessageContaining("km: '-3' is below zero")
                .hasMessageContaining("covered-hours")
                .hasMessageContaining("odometer-km: it is not two readings in order")
                .hasMessageContaining("'yesterday' is not a time")
                .hasMessageContaining("times: it ends before it begins")
                .hasMessageContaining("chances");
    }

    private static Optional<String> together(CaseFile file) {
        return LoggedEvidence.together(file, CombinedEvidence.of(file));
    }
}
