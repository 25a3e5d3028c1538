package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.read.Progress;

class ClockTest {
    @TempDir
    private Path folder;

    private final StringBuilder text = new StringBuilder("time_s,engine_rpm,speed_kmh\n");

    private void rows(double from, double seconds) {
        for (int i = 0; i < seconds * 10; i++) {
            row(from + i / 10.0);
        }
    }

    private void row(double seconds) {
        text.append(String.format(Locale.ROOT, "%.1f,1400,72.0%n", seconds));
    }

    private TripResult read() throws IOException {
        Path file = Files.writeString(folder.resolve("clock.csv"), text);
        return ReadTrip.read(TripRequest.of(file, InventedTrucks.ten()), Progress.SILENT);
    }

    @Test
    void a_gap_adds_neither_time_nor_distance() throws IOException {
        rows(0, 100);
        rows(1000, 100);

        TripResult trip = read();

        assertThat(trip.clock().gaps()).isEqualTo(1);
        assertThat(trip.clock().gapSeconds()).isEqualTo(900.1, within(0.01));
        assertThat(trip.summary().coveredHours()).isEqualTo(199.8 / 3600, within(1e-6));
        assertThat(trip.summary().km()).isEqualTo(72.0 * 199.8 / 3600, within(1e-4));
    }

    @Test
    void duplicates_and_small_steps_back_are_left_out_and_counted() throws IOException {
        rows(0, 50);
        row(49.9);
        row(49.2);
        rows(50, 50);

        TripResult trip = read();

        assertThat(trip.clock().duplicates()).isEqualTo(1);
        assertThat(trip.clock().backward()).isEqualTo(1);
        assertThat(trip.summary().coveredHours()).isEqualTo(99.9 / 3600, within(1e-6));
    }

    @Test
    void a_clock_set_back_or_by_years_ahead_starts_the_record_afresh() throws IOException {
        rows(5000, 50);
        rows(100, 50);
        rows(1_700_000_000, 50);

        TripResult trip = read();

        assertThat(trip.clock().setBack()).isEqualTo(1);
        assertThat(trip.clock().jumpsAhead()).isEqualTo(1);
        assertThat(trip.clock().gapSeconds()).isZero();
        assertThat(trip.summary().coveredHours()).isEqualTo(149.7 / 3600, within(1e-6));
    }
}
