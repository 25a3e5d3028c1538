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

/**
 * Low range taken while braking, the clutch let in slowly: by the time that the ratio fits, the truck is below the ceiling.
 * With the foot off, only the road through the gear can have driven the engine up (mechanics, from memory), so the gear was
 * in when that began. Rows written by hand, 10 a second, without knob and lever.
 */
class DrivenUpEngineTest {
    private static final GearTable TABLE = InventedTrucks.ten();
    private static final double TAKEN_KMH = 32;
    private static final double SETTLED_KMH = 26;
    /** 2100 rpm / (3.78 x 320 x 3.90 / 60), the ceiling of fifth. */
    private static final double CEILING_KMH = 26.7;

    @TempDir
    private Path folder;

    private final StringBuilder log = new StringBuilder("time_s,engine_rpm,speed_kmh,clutch,accel_pct\n");
    private int rows;

    private static double locked(String gear, double kmh) {
        return InventedTrucks.engineRpm(TABLE, gear, kmh);
    }

    private void row(double rpm, double kmh, int clutch, double accelerator) {
        log.append(
                String.format(Locale.ROOT, "%.1f,%.1f,%.2f,%d,%.0f%n", rows++ / 10.0, rpm, kmh, clutch, accelerator));
    }

    private List<HabitEvent> fifthTakenWhileBraking(double accelerator) throws IOException {
        for (int i = 0; i < 100; i++) {
            double kmh = TAKEN_KMH - 0.01 * (100 - i);
            row(locked("6", kmh), kmh, 0, 20);
        }
        for (int i = 1; i <= 10; i++) {
            row(locked("6", TAKEN_KMH) - 75 * i, TAKEN_KMH, 1, 0);
        }
        double low = locked("6", TAKEN_KMH) - 750;
        for (int i = 1; i <= 7; i++) {
            double done = i / 7.0;
            row(
                    low + done * (locked("5", SETTLED_KMH) - low),
                    TAKEN_KMH + done * (SETTLED_KMH - TAKEN_KMH),
                    i < 6 ? 1 : 0,
                    accelerator);
        }
        for (int i = 0; i < 100; i++) {
            row(locked("5", SETTLED_KMH - 0.05 * i), SETTLED_KMH - 0.05 * i, 0, 0);
        }
        Path file = Files.writeString(folder.resolve("drive.csv"), log);
        return ReadTrip.read(TripRequest.of(file, TABLE), Progress.SILENT).events().stream()
                .filter(e -> e.kind() == EventKind.LOW_RANGE_ABOVE_CEILING)
                .toList();
    }

    @Test
    void a_gear_that_drives_the_engine_up_was_in_before_the_ratio_fits() throws IOException {
        List<HabitEvent> events = fifthTakenWhileBraking(0);

        assertThat(events).singleElement().satisfies(e -> {
            assertThat(e.figures().get(EventFigure.CEILING_KMH)).isCloseTo(CEILING_KMH, within(0.1));
            assertThat(e.figures().get(EventFigure.RANGE_MOVED_KMH)).isCloseTo(TAKEN_KMH, within(1.5));
        });
    }

    @Test
    void an_engine_that_the_foot_brings_up_says_nothing_of_when_the_gear_was_taken() throws IOException {
        assertThat(fifthTakenWhileBraking(30)).isEmpty();
    }
}
