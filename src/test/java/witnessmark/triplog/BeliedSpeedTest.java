package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;

/** Logs written row by row, ten a second, in which one signal alone would blame a driver. Common practice, no source. */
class BeliedSpeedTest {
    private static final String HEADER = "time_s,engine_rpm,speed_kmh,clutch,accel_pct,input_shaft_rpm\n";

    private final GearTable table = InventedTrucks.thirteen();

    @TempDir
    private Path folder;

    private final StringBuilder rows = new StringBuilder(HEADER);
    private int count;

    private void row(double rpm, double kmh, boolean pedal, double accelerator, String input) {
        rows.append(String.format(
                Locale.ROOT,
                "%.1f,%.0f,%.2f,%d,%.0f,%s%n",
                count++ / 10.0,
                rpm,
                kmh,
                pedal ? 1 : 0,
                accelerator,
                input));
    }

    private boolean finds(EventKind kind) throws IOException {
        Path log = Files.writeString(folder.resolve("log.csv"), rows);
        return ReadTrip.read(TripRequest.of(log, table), Progress.SILENT).events().stream()
                .anyMatch(e -> e.kind() == kind);
    }

    /** The engine seems to idle for half a minute at 50 km/h; pulling, or an input shaft that turns faster, belies it. */
    @ParameterizedTest
    @CsvSource({"0, 600, true", "0, 1250, false", "60, 600, false", "60, '', false", "0, '', true"})
    void a_roll_at_idle_is_one_only_if_nothing_belies_it(double accelerator, String input, boolean rolled)
            throws IOException {
        for (int i = 0; i < 50; i++) {
            row(600, 0, i > 20, 0, "");
        }
        for (int i = 0; i < 300; i++) {
            row(600, 50, false, accelerator, input);
        }

        assertThat(finds(EventKind.COAST_IN_NEUTRAL)).isEqualTo(rolled);
    }

    /** From the crawler to the next gear within three seconds of the standstill, the engine let fall in between. */
    @Test
    void a_quick_shift_out_of_the_crawler_is_no_clutch_dropped() throws IOException {
        double perKmh = table.outputRpmPerKmh();
        double crawler = ratio("Lo");
        double first = ratio("1");
        double kmh = 1900 / (crawler * perKmh);
        for (int i = 0; i < 60; i++) {
            row(600, 0, i > 20, 10, "");
        }
        ramp(15, t -> kmh * (0.3 + 0.7 * t), t -> 1900 * (0.3 + 0.7 * t));
        ramp(6, t -> kmh, t -> 1900 + t * (kmh * perKmh * first - 1900));
        ramp(50, t -> kmh * (1 + 0.5 * t), t -> kmh * (1 + 0.5 * t) * perKmh * first);

        assertThat(finds(EventKind.CLUTCH_DROPPED)).isFalse();
    }

    private double ratio(String gear) {
        return table.gears().stream()
                .filter(g -> g.name().equals(gear))
                .findFirst()
                .orElseThrow()
                .ratio();
    }

    private void ramp(int steps, DoubleUnaryOperator kmh, DoubleUnaryOperator rpm) {
        for (int i = 1; i <= steps; i++) {
            double t = (double) i / steps;
            row(rpm.applyAsDouble(t), kmh.applyAsDouble(t), false, 30, "");
        }
    }
}
