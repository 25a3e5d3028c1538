package witnessmark.casefile.logged;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.Evidence.SourceFile;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Stamp;
import witnessmark.gearbox.Layout;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.LogRecord.Tally;
import witnessmark.triplog.summary.RowMarks;
import witnessmark.triplog.summary.TimeSpan;

class AddLogsTest {
    private static final Instant OPENED = Instant.parse("2026-03-10T08:00:00Z");
    private static final Instant NOW = Instant.parse("2026-04-01T08:00:00Z");
    private static final Layout OF_TEN = layout(OptionalInt.of(10));

    private static Layout layout(OptionalInt ratios) {
        return new Layout(
                ratios,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static CaseHistory opened(CaseSheet sheet) {
        return CaseHistory.leadingTo(sheet.gearbox(OF_TEN).toCaseFile(), new Stamp(OPENED, "anna"));
    }

    private static LogRecord record(double fitting, String day) {
        long from = TimeSpan.micros(Instant.parse(day + "T06:00:00Z"));
        return new LogRecord(
                List.of(new TimeSpan(from, from + 3_600_000_000L)),
                Optional.empty(),
                50,
                1,
                0.9,
                0.8,
                0.8 * fitting,
                0,
                Map.of("log-standing-start-high-range", new Tally(9, 8.5, 10)),
                List.of());
    }

    private static AddLogs.Offer offer(String id, char hash, LogRecord record, Layout gearbox) {
        String sha256 = String.valueOf(hash).repeat(64);
        return new AddLogs.Offer(
                id,
                "a-truck",
                gearbox,
                List.of(),
                Map.of(),
                List.of(new SourceFile("trip.csv", sha256)),
                List.of(new LogsOfCase.Log("trip.csv", sha256, record.spans(), record.marks())),
                record,
                List.of(),
                List.of("a gap"));
    }

    private static Evidence added(CaseHistory before, AddLogs.Offer offer) {
        return new AddLogs(before, offer, NOW).evidence("");
    }

    @Test
    void a_fitting_log_becomes_evidence_with_its_counts_and_remarks() {
        LogRecord record = record(1, "2026-03-02");

        Evidence evidence = added(opened(new CaseSheet(new CaseId("c"))), offer("log-a", 'a', record, OF_TEN));

        assertThat(evidence.record()).contains(record);
        assertThat(evidence.spokenOf()).contains("log-standing-start-high-range");
        assertThat(evidence.summary()).contains("Of the reading: a gap.");
    }

    @Test
    void the_same_driving_is_refused_unless_it_takes_the_place_of_what_the_case_holds() {
        LogRecord record = record(1, "2026-03-02");
        Evidence held = added(opened(new CaseSheet(new CaseId("c"))), offer("log-a", 'a', record, OF_TEN));
        CaseHistory before = opened(new CaseSheet(new CaseId("c")).evidence(held));

        assertThatThrownBy(() -> added(before, offer("log-b", 'a', record(1, "2026-03-05"), OF_TEN)))
                .isInstanceOf(CaseRefused.class)
                .hasMessageContaining("is the same log as evidence log-a of this case");
        assertThatThrownBy(() -> added(before, offer("log-b", 'b', record, OF_TEN)))
                .isInstanceOf(CaseRefused.class)
                .hasMessageContaining("covers the same time as evidence log-a of this case");
        assertThat(added(before, offer("log-b", 'b', record(1, "2026-03-05"), OF_TEN))
                        .id())
                .isEqualTo("log-b");
        assertThat(added(before, offer("log-a", 'a', record, OF_TEN)).id()).isEqualTo("log-a");
    }

    @Test
    void rows_without_dates_are_known_again_in_another_file() {
        RowMarks marks = new RowMarks(List.of("0".repeat(16), "1".repeat(16), "2".repeat(16), "3".repeat(16)));
        RowMarks others = new RowMarks(List.of("0".repeat(16), "1".repeat(16), "4".repeat(16)));
        Evidence held = added(opened(new CaseSheet(new CaseId("c"))), offer("log-a", 'a', undated(marks), OF_TEN));
        CaseHistory before = opened(new CaseSheet(new CaseId("c")).evidence(held));

        assertThatThrownBy(() -> added(before, offer("log-b", 'b', undated(marks), OF_TEN)))
                .isInstanceOf(CaseRefused.class)
                .hasMessageContaining("'trip.csv' holds rows of evidence log-a of this case; they would count twice");
        assertThat(added(before, offer("log-b", 'b', undated(others), OF_TEN)).record())
                .contains(undated(others));
    }

    private static LogRecord undated(RowMarks marks) {
        return new LogRecord(
                List.of(new TimeSpan(0, 3_600_000_000L)),
                Optional.empty(),
                50,
                1,
                0.9,
                0.8,
                0.8,
                0,
                Map.of(),
                List.of(),
                marks);
    }

    @Test
    void doubts_are_overruled_in_so_many_words_which_the_case_keeps() {
        CaseHistory before = opened(new CaseSheet(new CaseId("c")));
        AddLogs add = new AddLogs(before, offer("log-a", 'a', record(0.5, "2026-03-20"), OF_TEN), NOW);

        assertThat(add.doubts()).hasSize(2);
        assertThatThrownBy(() -> add.evidence(""))
                .isInstanceOf(CaseRefused.class)
                .hasMessageContaining("the ratios of this truck fit in only 50 %")
                .hasMessageContaining("it was recorded until 2026-03-20")
                .hasMessageContaining("nothing was stored; if they are all the same, add them with --nevertheless");
        assertThat(add.evidence("the axle was changed").record().orElseThrow().doubts())
                .hasSize(3)
                .contains("added nevertheless: the axle was changed");
    }

    @Test
    void logs_of_another_gearbox_are_refused_and_of_one_that_is_not_told_are_not() {
        CaseHistory before = opened(new CaseSheet(new CaseId("c")));
        LogRecord record = record(1, "2026-03-02");

        assertThatThrownBy(() -> added(before, offer("log-a", 'a', record, layout(OptionalInt.of(13)))))
                .isInstanceOf(CaseRefused.class)
                .hasMessage("case 'c' says that its gearbox has 10 forward ratios, truck 'a-truck' has 13 forward"
                        + " ratios; name the truck of the case, or put the case right with: case gearbox c --ratios N"
                        + " --splitter none|high-only|both");
        assertThat(added(before, offer("log-a", 'a', record, Layout.unknown())).id())
                .isEqualTo("log-a");
    }
}
