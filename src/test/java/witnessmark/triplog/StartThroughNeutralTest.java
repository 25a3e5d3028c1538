package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;

/** At two rows a second a first gear may be gone before it shows; a neutral switch still tells that it was changed. */
class StartThroughNeutralTest {
    private static final double FOURTH = 3.84;

    @TempDir
    private Path folder;

    private final GearTable table = InventedTrucks.thirteen();
    private final StringBuilder rows = new StringBuilder("time_s,engine_rpm,speed_kmh,clutch,neutral_switch\n");
    private int halves;

    private void row(double kmh, double rpm, int clutch, int neutral) {
        rows.append(halves++ / 2.0).append(',').append(rpm).append(',').append(kmh);
        rows.append(',').append(clutch).append(',').append(neutral).append('\n');
    }

    private long startsTooHigh(int neutralOnTheWay) throws IOException {
        for (int i = 0; i < 10; i++) {
            row(0, 600 + i % 2, 0, 1);
        }
        row(0, 650, 1, 0);
        row(1.5, 800, 1, 0);
        row(3.5, 850, 1, 0);
        row(6, 900, 0, neutralOnTheWay);
        row(8, 880, 0, neutralOnTheWay);
        for (int i = 0; i < 40; i++) {
            double kmh = 12 + 0.2 * i;
            row(kmh, FOURTH * table.outputRpmPerKmh() * kmh, 0, 0);
        }
        Path file = Files.writeString(folder.resolve("start.csv"), rows);
        return ReadTrip.read(TripRequest.of(file, table), Progress.SILENT).events().stream()
                .filter(e -> e.kind() == EventKind.START_GEAR_TOO_HIGH)
                .count();
    }

    /** A lever that was in neutral after the wheels turned had another gear before: mechanics, from memory. */
    @Test
    void a_gear_taken_through_neutral_is_not_the_gear_of_the_start() throws IOException {
        assertThat(startsTooHigh(1)).isZero();
    }

    @Test
    void a_gear_held_since_the_wheels_turned_is() throws IOException {
        assertThat(startsTooHigh(0)).isOne();
    }
}
