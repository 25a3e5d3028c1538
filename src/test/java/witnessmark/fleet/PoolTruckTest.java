package witnessmark.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import witnessmark.fleet.TruckDay.SourceLog;
import witnessmark.gearbox.Layout;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.LogRecord.Tally;
import witnessmark.triplog.evidence.WeighRecord;
import witnessmark.triplog.summary.RecordedTimes.Odometer;
import witnessmark.triplog.summary.TimeSpan;

class PoolTruckTest {
    private static final String STARTS = "log-standing-start-high-range";
    private static final String COASTS = "log-rolling-at-idle";

    private static TimeSpan span(String from, String to) {
        return new TimeSpan(TimeSpan.micros(Instant.parse(from)), TimeSpan.micros(Instant.parse(to)));
    }

    private static LogRecord record(double km, long starts, TimeSpan... spans) {
        return new LogRecord(
                List.of(spans),
                Optional.of(new Odometer(1000, 1000 + km)),
                km,
                km / 32,
                km / 64,
                km / 128,
                km / 128,
                0,
                Map.of(STARTS, new Tally(starts, 0.9 * starts, 10), COASTS, new Tally(0, 0, km / 100)),
                List.of());
    }

    private static FleetLog log(String path, int content, String day, LogRecord record) {
        FleetFile file = new FleetFile(path, 1, 1);
        String hash = String.format("%064x", content);
        return new FleetLog(
                path,
                new TruckDay(
                        file.truck(),
                        day,
                        "thirteen-ratio",
                        Layout.unknown(),
                        record.tallies().get(STARTS).count(),
                        record,
                        List.of(new SourceLog(hash, file.name())),
                        List.of()),
                List.of());
    }

    private static final FleetLog MORNING =
            log("a/1.csv", 1, "2026-03-02", record(80, 2, span("2026-03-02T06:00:00Z", "2026-03-02T08:00:00Z")));
    private static final FleetLog NOON =
            log("a/2.csv", 2, "2026-03-02", record(40, 1, span("2026-03-02T08:00:00Z", "2026-03-02T09:00:00Z")));
    private static final FleetLog NEXT_DAY =
            log("a/3.csv", 3, "2026-03-03", record(60, 0, span("2026-03-03T06:00:00Z", "2026-03-03T07:30:00Z")));

    @Test
    void logs_of_a_day_are_one_record_and_all_days_one_witness() {
        PoolTruck.Pooled pooled = PoolTruck.of(List.of(NEXT_DAY, NOON, MORNING));

        assertThat(pooled.days()).extracting(TruckDay::day).containsExactly("2026-03-02", "2026-03-03");
        assertThat(pooled.days().get(0).record())
                .isEqualTo(MORNING.asDay().record().plus(NOON.asDay().record()));
        assertThat(pooled.days().get(0).acts()).isEqualTo(3);
        assertThat(pooled.findings().stream().map(TruckFinding::said))
                .containsExactlyInAnyOrderElementsOf(WeighRecord.weigh(MORNING.asDay()
                        .record()
                        .plus(NOON.asDay().record())
                        .plus(NEXT_DAY.asDay().record())));
        assertThat(pooled.setAside()).isEmpty();
    }

    @Test
    void the_order_in_which_logs_come_in_changes_nothing() {
        List<FleetLog> logs = new ArrayList<>(List.of(MORNING, NOON, NEXT_DAY));
        PoolTruck.Pooled first = PoolTruck.of(logs);
        for (int i = 0; i < 10; i++) {
            Collections.shuffle(logs, new Random(i));
            assertThat(PoolTruck.of(logs)).isEqualTo(first);
        }
    }

    @Test
    void the_same_content_and_the_same_time_count_once() {
        FleetLog copy = log("a/9-copy.csv", 1, "2026-03-02", MORNING.asDay().record());
        FleetLog other = log(
                "a/8-other.csv", 8, "2026-03-02", record(70, 5, span("2026-03-02T07:00:00Z", "2026-03-02T08:30:00Z")));

        PoolTruck.Pooled pooled = PoolTruck.of(List.of(copy, other, MORNING));

        assertThat(pooled.counted()).containsExactly(MORNING);
        assertThat(pooled.setAside())
                .extracting(UncountedLog::reason)
                .containsExactly(
                        "covers the same time as a/1.csv; it would count twice",
                        "the same log as a/1.csv; it would count twice");
    }

    @Test
    void a_log_under_two_trucks_counts_for_none() {
        FleetLog elsewhere = log("b/1.csv", 1, "2026-03-02", MORNING.asDay().record());

        FleetResult result = FleetResult.of(List.of(MORNING, elsewhere, NOON));

        assertThat(result.trucks()).containsOnlyKeys("a");
        assertThat(result.trucks().get("a").counted()).containsExactly(NOON);
        assertThat(result.uncounted()).extracting(UncountedLog::path).containsExactly("a/1.csv", "b/1.csv");
    }

    @Nested
    class AsARow {
        private List<String> row(TruckDay day) {
            return TruckDayRow.cells(day).stream().map(String::valueOf).toList();
        }

        @Test
        void a_record_comes_back_as_it_was() {
            TruckDay named = new TruckDay(
                    "=1+1; \"x\"",
                    TruckDay.UNDATED,
                    "",
                    Layout.unknown(),
                    3,
                    MORNING.asDay().record().with(List.of("a first doubt", "a second")),
                    List.of(
                            new SourceLog("ab".repeat(32), "a b%20c: \u6f22,.csv"),
                            new SourceLog("cd".repeat(32), "d")),
                    List.of("one remark"));

            assertThat(TruckDayRow.read(row(named))).isEqualTo(named);
            assertThat(TruckDayRow.read(row(NEXT_DAY.asDay()))).isEqualTo(NEXT_DAY.asDay());
        }

        @Test
        void a_table_of_an_earlier_build_knows_no_open_acts() {
            List<String> cells = new ArrayList<>(row(MORNING.asDay()));
            cells.set(FleetTable.DAYS.header().indexOf("tallies"), "log-x=1/0.9/12 log-y=0/0/3/2");

            assertThat(TruckDayRow.read(cells).record().tallies())
                    .containsExactly(
                            Map.entry("log-x", new Tally(1, 0.9, 12)), Map.entry("log-y", new Tally(0, 0, 3, 2)));
        }

        @Test
        void every_fault_names_its_column() {
            refused("day", "2026-3-2", "day");
            refused("km", "-1", "km");
            refused("km", "NaN", "km");
            refused("km", "", "km");
            refused("acts", "1.5", "acts");
            refused("splitter", "sideways", "splitter");
            refused("times", "2026-03-02T06:00:00Z", "times");
            refused("tallies", "log-x=1/2", "tallies");
            refused("tallies", "log-x=1/1/1/-1", "tallies");
            refused("tallies", "log-x=1/1/1/0.5", "tallies");
            refused("tallies", "log-x=1/1/1/0/0", "tallies");
            refused("tallies", "log-x=1/1/1 log-x=1/1/1", "tallies");
            refused("files", "", "files");
            refused("files", "abc:name", "files");
            refused("odometer_to_km", "", "odometer_to_km");
        }

        private void refused(String column, String value, String named) {
            List<String> cells = new ArrayList<>(row(MORNING.asDay()));
            cells.set(FleetTable.DAYS.header().indexOf(column), value);
            assertThatThrownBy(() -> TruckDayRow.read(cells))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("column " + named + ": ");
        }
    }
}
