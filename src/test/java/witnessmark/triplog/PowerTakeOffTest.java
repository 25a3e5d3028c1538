package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.event.EventFigure;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.summary.LogVerdict;

/** The power take-off left in on the road, in logs written row by row. */
class PowerTakeOffTest {
    private final GearTable table = InventedTrucks.ten();

    @TempDir
    private Path folder;

    /** Steady driving in top gear at one row a second; the switch is on from {@code on} until {@code off}. */
    private TripResult drive(double kmh, int on, int off, String column) throws IOException {
        StringBuilder log = new StringBuilder("time_s,engine_rpm,speed_kmh," + column + "\n");
        double rpm = kmh
                * table.outputRpmPerKmh()
                * table.gear(table.gears().size() - 1).ratio();
        for (int second = 0; second < 400; second++) {
            log.append(String.format(
                    Locale.ROOT, "%d,%.1f,%.2f,%d%n", second, rpm, kmh, second >= on && second < off ? 1 : 0));
        }
        Path file = Files.writeString(folder.resolve("drive.csv"), log);
        return ReadTrip.read(TripRequest.of(file, table), Progress.SILENT);
    }

    @Test
    void one_left_in_is_told_once_with_its_distance_and_rows() throws IOException {
        TripResult trip = drive(72, 100, 200, "pto");

        List<HabitEvent> events = trip.events();
        assertThat(events).extracting(HabitEvent::kind).containsExactly(EventKind.POWER_TAKE_OFF_ON_ROAD);
        // 99 steps of a second at 20 m/s between the first row with it and the last
        assertThat(events.get(0).figures().get(EventFigure.DISTANCE_KM)).isCloseTo(1.98, within(1e-9));
        assertThat(events.get(0).firstLine()).isEqualTo(102);
        assertThat(events.get(0).lastLine()).isEqualTo(201);
    }

    @Test
    void slow_work_with_it_is_no_event_and_counts_as_not_seen() throws IOException {
        LogVerdict verdict = drive(20, 100, 300, "pto").summary().verdict(EventKind.POWER_TAKE_OFF_ON_ROAD);

        assertThat(verdict.state()).isEqualTo(LogVerdict.State.NOT_SEEN_THOUGH_POSSIBLE);
    }

    @Test
    void a_log_without_its_switch_cannot_show_it() throws IOException {
        LogVerdict verdict = drive(72, 100, 200, "wipers").summary().verdict(EventKind.POWER_TAKE_OFF_ON_ROAD);

        assertThat(verdict.state()).isEqualTo(LogVerdict.State.CANNOT_BE_SEEN);
        assertThat(verdict.reason()).isEqualTo("the log has no power take-off");
    }
}
