package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.read.Progress;

/** The lever comes out of reverse while the truck still rolls back, and the range knob is moved then. */
class RollingBackTest {
    private static final double REVERSE_KMH = 6;

    @TempDir
    private Path folder;

    private final StringBuilder rows = new StringBuilder("time_s,engine_rpm,speed_kmh,range_knob,lever\n");
    private int tenths;

    private void drive(double seconds, double kmh, int knob, String lever) {
        for (int i = 0; i < seconds * 10; i++) {
            double rpm = lever.equals("R") ? 1200 : 600;
            rows.append(tenths++ / 10.0)
                    .append(',')
                    .append(rpm + i % 3)
                    .append(',')
                    .append(kmh == 0 ? 0 : kmh + i % 5 * 0.1);
            rows.append(',').append(knob).append(',').append(lever).append('\n');
        }
    }

    private List<EventKind> knobActs() throws IOException {
        Path file = Files.writeString(folder.resolve("back.csv"), rows);
        return ReadTrip.read(TripRequest.of(file, InventedTrucks.thirteen()), Progress.SILENT).events().stream()
                .map(e -> e.kind())
                .filter(k -> k == EventKind.RANGE_MOVED_IN_REVERSE || k == EventKind.RANGE_MOVED_IN_NEUTRAL)
                .toList();
    }

    /** The direction is that of the gear that drove last: mechanics, from memory. */
    @Test
    void a_knob_moved_while_still_rolling_back_is_moved_in_reverse() throws IOException {
        drive(5, 0, 0, "N");
        drive(6, REVERSE_KMH, 0, "R");
        drive(1, REVERSE_KMH, 0, "N");
        drive(2, REVERSE_KMH, 1, "N");
        drive(5, 0, 1, "N");

        assertThat(knobActs()).containsExactly(EventKind.RANGE_MOVED_IN_REVERSE);
    }

    @Test
    void a_knob_moved_after_the_truck_has_stopped_is_no_act() throws IOException {
        drive(5, 0, 0, "N");
        drive(6, REVERSE_KMH, 0, "R");
        drive(1, REVERSE_KMH, 0, "N");
        drive(2, 0, 0, "N");
        drive(5, 0, 1, "N");

        assertThat(knobActs()).isEmpty();
    }
}
