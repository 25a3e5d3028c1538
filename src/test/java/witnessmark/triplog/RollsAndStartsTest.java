package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.read.Progress;

/**
 * What one signal makes look like an act and another one explains, each beside the act itself; rows written by hand, 10 a
 * second. That an engine near idle in the top gear turns with the road, and out of gear stays while the road speed goes by,
 * is mechanics.
 */
class RollsAndStartsTest {
    private static final GearTable TABLE = InventedTrucks.ten();

    @TempDir
    private Path folder;

    private final StringBuilder log = new StringBuilder();
    private int rows;

    private static double ratio(String name) {
        return TABLE.gears().stream()
                .filter(g -> g.name().equals(name))
                .mapToDouble(KnobGear::ratio)
                .findFirst()
                .orElseThrow();
    }

    private void row(double rpm, double kmh, Object... more) {
        log.append(String.format(Locale.ROOT, "%.1f,%.1f,%.2f", rows++ / 10.0, rpm, kmh));
        for (Object value : more) {
            log.append(',').append(value);
        }
        log.append('\n');
    }

    private List<HabitEvent> read(String header, EventKind kind) throws IOException {
        Path file = Files.writeString(folder.resolve("drive.csv"), header + "\n" + log);
        return ReadTrip.read(TripRequest.of(file, TABLE), Progress.SILENT).events().stream()
                .filter(e -> e.kind() == kind)
                .toList();
    }

    /** Down to idle in tenth gear, foot off, pedal up; then a steady roll, in gear or with the engine left at idle. */
    private List<HabitEvent> rollNearIdle(String locked) throws IOException {
        double perKmh = TABLE.outputRpmPerKmh();
        for (int i = 0; i < 100; i++) {
            row(650, 0, 0, 0);
            row(650, 0, i == 99 ? 1 : 0, 0);
        }
        for (int i = 0; i < 200; i++) {
            double kmh = 60 - 0.1 * i;
            row(kmh * perKmh * ratio("10"), kmh, 0, i < 100 ? 30 : 0);
        }
        for (int i = 0; i < 300; i++) {
            double kmh = 40 - 0.025 * i;
            row(locked.isEmpty() ? 700 : kmh * perKmh * ratio(locked), kmh, 0, 0);
        }
        return read("time_s,engine_rpm,speed_kmh,clutch,accel_pct", EventKind.COAST_IN_NEUTRAL);
    }

    @Test
    void an_engine_that_turns_with_the_road_near_idle_is_in_gear() throws IOException {
        assertThat(rollNearIdle("10")).isEmpty();
    }

    @Test
    void one_that_stays_at_idle_while_the_road_speed_goes_by_is_not() throws IOException {
        assertThat(rollNearIdle("")).hasSize(1);
    }

    /** Half a minute in tenth near idle, then out of it: with the pedal down for the brakes, or left to roll. */
    @ParameterizedTest
    @CsvSource({"7, 2.5, 0", "25, 0.2, 1"})
    void the_part_of_a_roll_that_a_gear_explains_is_no_roll_out_of_gear(int seconds, double slowing, int coasts)
            throws IOException {
        double perKmh = TABLE.outputRpmPerKmh();
        for (int i = 0; i < 100; i++) {
            row(650, 0, 0);
        }
        for (int i = 0; i < 200; i++) {
            double kmh = 60 - 0.1 * i;
            row(kmh * perKmh * ratio("10"), kmh, i < 100 ? 30 : 0);
        }
        double steady = 715 / (perKmh * ratio("10"));
        for (int i = 0; i < 260; i++) {
            row(715 + i % 5, steady, 0);
        }
        for (int i = 0; i < 10 * seconds; i++) {
            row(650, steady - 0.1 * slowing * i, 0);
        }

        assertThat(read("time_s,engine_rpm,speed_kmh,accel_pct", EventKind.COAST_IN_NEUTRAL))
                .hasSize(coasts);
    }

    /** Stands, then rolls off with a clutch that slips for long at 800 rpm, until the gear has hold. */
    private void start(String gear, int range, int lever, double seconds) {
        double caught = 800 / (TABLE.outputRpmPerKmh() * ratio(gear));
        for (int i = 0; i < 30; i++) {
            row(650, 0, range, i < 20 ? 0 : lever, 1);
        }
        int slipping = (int) Math.round(10 * seconds);
        for (int i = 1; i <= slipping; i++) {
            row(800, caught * i / slipping, range, lever, 0);
        }
        for (int i = 0; i < 60; i++) {
            double kmh = caught + 0.05 * i;
            row(kmh * TABLE.outputRpmPerKmh() * ratio(gear), kmh, range, lever, 0);
        }
        for (int i = 0; i < 40; i++) {
            row(650, Math.max(0, caught - 0.4 * i), range, 0, 1);
        }
        for (int i = 0; i < 20; i++) {
            row(650, 0, 0, 0, 1);
        }
    }

    private List<HabitEvent> startInSeventh(double seconds, int rangeShown) throws IOException {
        for (int i = 0; i < 10; i++) {
            row(650, 0, 1, 0, 1);
        }
        start("1", 0, 11, 2);
        start("2", 0, 12, 3);
        start("7", rangeShown, 12, seconds);
        return read("time_s,engine_rpm,speed_kmh,range,lever,brake", EventKind.START_IN_HIGH_RANGE);
    }

    @Test
    void a_lever_that_stayed_where_it_was_shows_a_start_in_high_range_however_long_the_clutch_slipped()
            throws IOException {
        assertThat(startInSeventh(18, 1)).singleElement().satisfies(e -> assertThat(e.gearAfter())
                .contains("7"));
    }

    @Test
    void a_knob_that_stands_at_low_says_that_it_was_none() throws IOException {
        assertThat(startInSeventh(18, 0)).isEmpty();
    }

    @Test
    void without_lever_and_knob_so_long_a_slip_may_have_hidden_a_shift() throws IOException {
        start("7", 1, 12, 18);
        String text = log.toString().replaceAll("(?m)^([^,]*,[^,]*,[^,]*),.*$", "$1");
        Path file = Files.writeString(folder.resolve("bare.csv"), "time_s,engine_rpm,speed_kmh\n" + text);

        assertThat(ReadTrip.read(TripRequest.of(file, TABLE), Progress.SILENT).events())
                .noneMatch(e -> e.kind() == EventKind.START_IN_HIGH_RANGE);
    }

    /** Tenth gear at so many rpm, the engine pulling and gaining. */
    private List<HabitEvent> land(double rpm, double gain) throws IOException {
        double perKmh = TABLE.outputRpmPerKmh();
        for (int i = 0; i < 60; i++) {
            row(1400, 1400 / (perKmh * ratio("9")), 20);
        }
        for (int i = 0; i < 10; i++) {
            row(900, rpm / (perKmh * ratio("10")), 0);
        }
        for (double now = rpm; now < 1300; now += gain / 10) {
            row(now, now / (perKmh * ratio("10")), 90);
        }
        return read("time_s,engine_rpm,speed_kmh,accel_pct", EventKind.LUGGING);
    }

    @Test
    void a_shift_that_landed_low_and_gains_fast_is_no_lugging() throws IOException {
        assertThat(land(750, 130)).isEmpty();
    }

    @Test
    void one_that_hardly_gains_is() throws IOException {
        assertThat(land(750, 40)).hasSize(1);
    }
}
