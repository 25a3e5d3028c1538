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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.triplog.event.EventFigure;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.read.Progress;

/**
 * The lever goes from neutral into a low gear with the pedal down while the truck rolls: no ratio ever fits, yet the road
 * turns the disc at road speed times that gear's ratio (rigid-body mechanics). Rows written by hand, 10 a second; the lever's
 * positions are numbered from 7, as a logger may.
 */
class DiscByLeverTest {
    private static final GearTable TABLE = InventedTrucks.ten();

    @TempDir
    private Path folder;

    private final StringBuilder log = new StringBuilder("time_s,engine_rpm,speed_kmh,clutch,range,lever\n");
    private int rows;

    private void rows(double seconds, double rpm, double fromKmh, double toKmh, int clutch, int range, int lever) {
        int count = (int) Math.round(10 * seconds);
        for (int i = 1; i <= count; i++) {
            double kmh = fromKmh + (toKmh - fromKmh) * i / count;
            double engine = rpm > 0 ? rpm : kmh * TABLE.outputRpmPerKmh() * -rpm;
            log.append(String.format(
                    Locale.ROOT, "%.1f,%.1f,%.2f,%d,%d,%d%n", rows++ / 10.0, engine, kmh, clutch, range, lever));
        }
    }

    private void drive(String name, double fromKmh, double toKmh) {
        drive(name, fromKmh, toKmh, 6);
    }

    private void drive(String name, double fromKmh, double toKmh, int before) {
        KnobGear gear = TABLE.gears().stream()
                .filter(g -> g.name().equals(name))
                .findFirst()
                .orElseThrow();
        int range = gear.range() == KnobGear.Range.HIGH ? 1 : 0;
        rows(0.5, 900, fromKmh, fromKmh, 1, range, 0);
        rows(0.3, 900, fromKmh, fromKmh, 1, range, before + gear.lever());
        rows(5, -gear.ratio(), fromKmh, toKmh, 0, range, before + gear.lever());
    }

    /** First and second, twice each, then at a speed out of gear, and the lever put into a position with the pedal down. */
    private List<HabitEvent> found(double kmh, int range, int lever) throws IOException {
        return found(kmh, range, lever, () -> {});
    }

    private List<HabitEvent> found(double kmh, int range, int lever, Runnable further) throws IOException {
        rows(3, 650, 0, 0, 0, 0, 0);
        for (int i = 0; i < 2; i++) {
            drive("1", 4, 6);
            drive("2", 7, 9);
        }
        further.run();
        drive("5", 14, 20);
        drive("6", 20, kmh);
        rows(0.5, 1000, kmh, kmh, 1, 1, 0);
        rows(1, 800, kmh, kmh, 1, range, 0);
        rows(2, 700, kmh, kmh, 1, range, lever);
        rows(1, 700, kmh, kmh, 1, range, 0);
        rows(0.5, 700, kmh, kmh, 0, 1, 0);
        drive("6", kmh, 20);
        Path file = Files.writeString(folder.resolve("drive.csv"), log);
        return ReadTrip.read(TripRequest.of(file, TABLE), Progress.SILENT).events().stream()
                .filter(e -> e.kind() == EventKind.DISC_OVERSPEED)
                .toList();
    }

    @Test
    void the_lever_shows_the_gear_that_turns_the_disc() throws IOException {
        List<HabitEvent> events = found(24, 0, 8);

        assertThat(events).hasSize(1);
        // 24 km/h x 20.8 rpm per km/h x 2.2 x 3.78 over 2,100 rpm
        assertThat(events.get(0).figures().get(EventFigure.GOVERNED_MULTIPLE))
                .isCloseTo(24 * 20.8 * 2.2 * 3.78 / 2100, within(0.01));
        assertThat(events.get(0).gearAfter()).contains("2");
        assertThat(events.get(0).seconds()).isBetween(1.5, 2.1);
    }

    @Test
    void a_little_above_governed_speed_it_is_none() throws IOException {
        assertThat(found(15, 0, 8)).isEmpty();
    }

    @Test
    void in_high_range_the_same_position_is_none() throws IOException {
        assertThat(found(24, 1, 8)).isEmpty();
    }

    /** Third gear once, at the number after those of first and second, or at another. */
    @ParameterizedTest
    @CsvSource({"6, 9, 1", "7, 10, 0"})
    void a_position_seen_once_is_known_where_the_numbers_run_as_the_levers_do(int before, int lever, int events)
            throws IOException {
        List<HabitEvent> found = found(34, 0, lever, () -> drive("3", 10, 13, before));

        assertThat(found).hasSize(events);
    }

    @Test
    void a_position_that_was_never_seen_with_a_gear_in_hand_tells_nothing() throws IOException {
        assertThat(found(34, 0, 9)).isEmpty();
    }
}
