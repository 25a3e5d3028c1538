package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.signal.Signal;

/** Logs written row by row, ten a second, whose road speed stays at 0 while the truck is driven. Common practice, no source. */
class DeadRoadSpeedTest {
    private final GearTable table = InventedTrucks.thirteen();

    @TempDir
    private Path folder;

    private final StringBuilder rows =
            new StringBuilder("time_s,engine_rpm,speed_kmh,clutch,accel_pct,output_shaft_rpm,brake\n");
    private int count;

    private void row(double rpm, double kmh, int pedal, double accelerator, double shaftRpm) {
        rows.append(String.format(
                Locale.ROOT,
                "%.1f,%.0f,%.2f,%d,%.0f,%s,%d%n",
                count++ / 10.0,
                rpm,
                kmh,
                pedal,
                accelerator,
                Double.isNaN(shaftRpm) ? "" : String.format(Locale.ROOT, "%.0f", shaftRpm),
                count % 300 == 0 ? 1 : 0));
    }

    private TripResult read() throws IOException {
        Path log = Files.writeString(folder.resolve("log.csv"), rows);
        return ReadTrip.read(TripRequest.of(log, table), Progress.SILENT);
    }

    /** The pedal half down and the accelerator on for ten seconds, as on a slope, or in a start whose speed is not told. */
    private void slip() {
        for (int i = 0; i < 50; i++) {
            row(650, 0, 0, 0, Double.NaN);
        }
        for (int i = 0; i < 100; i++) {
            row(1000 + i % 7, 0, 1, 30, Double.NaN);
        }
    }

    @Test
    void a_pedal_and_an_accelerator_hold_no_truck_on_a_slope_if_its_road_speed_never_left_0() throws IOException {
        slip();
        for (int i = 0; i < 600; i++) {
            row(1200 + i % 300, 0, 0, 50, Double.NaN);
        }

        TripResult trip = read();

        assertThat(trip.events()).isEmpty();
        assertThat(trip.summary().highestKmh()).isZero();
    }

    @Test
    void they_do_where_it_moves_afterwards() throws IOException {
        slip();
        for (int i = 0; i < 600; i++) {
            double kmh = Math.min(0.15 * i, 6);
            row(Math.max(650, kmh * table.outputRpmPerKmh() * table.gear(1).ratio()), kmh, 0, 50, Double.NaN);
        }

        assertThat(read().events()).extracting(HabitEvent::kind).contains(EventKind.RIDING_CLUTCH);
    }

    /** 600 s at 60 km/h by the shaft are 10 km. */
    @Test
    void an_output_shaft_that_turns_takes_its_place() throws IOException {
        double shaft = 60 * table.outputRpmPerKmh();
        for (int i = 0; i < 50; i++) {
            row(650, 0, i % 2, 0, 0);
        }
        for (int i = 0; i < 6000; i++) {
            row(1400 + i % 9, 0, 0, 40, shaft + i % 5);
        }

        TripResult trip = read();

        assertThat(trip.summary().km()).isCloseTo(10, Percentage.withPercentage(1));
        assertThat(trip.frozen()).anySatisfy(f -> {
            assertThat(f.signal()).isEqualTo(Signal.ROAD_SPEED);
            assertThat(f.value()).isZero();
            assertThat(f.seconds()).isBetween(598.0, 601.0);
        });
    }

    @Test
    void a_shaft_that_creeps_while_road_speed_still_shows_0_does_not() throws IOException {
        for (int i = 0; i < 100; i++) {
            row(650, 0, 0, 0, 2 * table.outputRpmPerKmh());
        }
        for (int i = 0; i < 300; i++) {
            row(1000, 20, 0, 40, 40 * table.outputRpmPerKmh());
        }

        TripResult trip = read();

        assertThat(trip.frozen()).isEmpty();
        assertThat(trip.summary().highestKmh()).isEqualTo(20);
    }
}
