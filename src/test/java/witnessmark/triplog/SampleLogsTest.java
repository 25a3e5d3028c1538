package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.summary.LogVerdict;
import witnessmark.triplog.summary.TripSummary;

class SampleLogsTest {
    private static final Path FOLDER = Path.of("sample-cases/logs");

    private static TripSummary read(String name) {
        return ReadTrip.read(TripRequest.of(FOLDER.resolve(name), InventedTrucks.thirteen()), Progress.SILENT)
                .summary();
    }

    @Test
    void the_shipped_logs_are_small() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            List<Path> logs = files.toList();
            assertThat(logs).hasSizeGreaterThanOrEqualTo(5);
            long bytes = logs.stream().mapToLong(f -> f.toFile().length()).sum();
            assertThat(bytes).isLessThan(1_000_000);
        }
    }

    @Test
    void each_shipped_log_shows_what_its_name_says_and_nothing_worse() {
        assertThat(read("unit-31_high-range-starts.csv").eventCounts())
                .containsOnly(Map.entry(EventKind.START_IN_HIGH_RANGE, 3L));
        assertThat(read("unit-31_after-coaching.csv").eventCounts()).isEmpty();
        assertThat(read("unit-32_coast-and-tow.candump").eventCounts())
                .containsEntry(EventKind.COAST_IN_NEUTRAL, 2L)
                .containsEntry(EventKind.ROLLING_ENGINE_STOPPED, 1L);
        assertThat(read("unit-33_low-range-too-fast.csv").eventCounts())
                .containsEntry(EventKind.LOW_RANGE_ABOVE_CEILING, 3L)
                .containsEntry(EventKind.OVERDRIVE_TO_LOW, 3L);
    }

    @Test
    void the_slow_logger_cannot_show_the_starts_that_the_fast_one_shows() {
        LogVerdict slow = read("unit-34_slow-logger.csv").verdict(EventKind.START_IN_HIGH_RANGE);

        assertThat(slow.state()).isEqualTo(LogVerdict.State.CANNOT_BE_SEEN);
        assertThat(slow.reason())
                .isEqualTo("engine speed comes once every 5 s; two a second are needed without a clutch signal");
    }
}
