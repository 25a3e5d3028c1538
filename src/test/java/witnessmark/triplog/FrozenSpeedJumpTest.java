package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.read.Progress;

/** A road speed that stood still and then shows the true one leaps; that is the log's fault. Rows by hand, 10 a second. */
class FrozenSpeedJumpTest {
    private static final GearTable TABLE = InventedTrucks.ten();
    private static final double TENTH = TABLE.gears().stream()
            .filter(g -> g.name().equals("10"))
            .mapToDouble(KnobGear::ratio)
            .findFirst()
            .orElseThrow();

    @TempDir
    private Path folder;

    /** The engine falls as the truck slows down in tenth gear from 90 to the speed given; the road speed shows 90 and leaps. */
    private TripResult readLeap(double trueKmh) throws IOException {
        StringBuilder log = new StringBuilder("time_s,engine_rpm,speed_kmh\n");
        for (int i = 0; i < 800; i++) {
            double slowed = Math.max(0, Math.min(1, (i - 200) / 300.0));
            double kmh = 90 + slowed * (trueKmh - 90) + (i < 200 ? 0.02 * (i - 200) : 0);
            double shown = i < 200 ? kmh : i < 500 ? 90 : 55;
            log.append(String.format(
                    Locale.ROOT, "%.1f,%.1f,%.2f%n", i / 10.0, kmh * TABLE.outputRpmPerKmh() * TENTH, shown));
        }
        Path file = Files.writeString(folder.resolve("leap.csv"), log);
        return ReadTrip.read(TripRequest.of(file, TABLE), Progress.SILENT);
    }

    private static long count(TripResult trip, EventKind kind) {
        return trip.events().stream().filter(e -> e.kind() == kind).count();
    }

    private static long jumps(TripResult trip) {
        return count(trip, EventKind.IMPOSSIBLE_SPEED_JUMP);
    }

    /** Two rows a second: the engine gains 8 % within 9 s of pulling, while the road speed stands still, or only nearly so. */
    private TripResult readSlip(double stepKmh) throws IOException {
        StringBuilder log = new StringBuilder("time_s,engine_rpm,speed_kmh,clutch,engine_torque_pct\n");
        for (int i = 0; i < 800; i++) {
            double kmh = i < 500 ? 45 + 0.03 * i : 60;
            double slipped = 1 + 0.08 * Math.max(0, Math.min(1, (i - 500) / 18.0));
            double shown = kmh + (i % 2) * (i < 500 ? 0.02 : stepKmh);
            log.append(String.format(
                    Locale.ROOT,
                    "%.1f,%.1f,%.2f,%d,%d%n",
                    i / 2.0,
                    kmh * TABLE.outputRpmPerKmh() * TENTH * slipped + 8 * Math.sin(2.3 * i),
                    shown,
                    i < 5 ? 1 : 0,
                    i < 490 ? 30 : 75));
        }
        Path file = Files.writeString(folder.resolve("slip.csv"), log);
        return ReadTrip.read(TripRequest.of(file, TABLE), Progress.SILENT);
    }

    @Test
    void a_road_speed_that_comes_fine_and_stands_still_while_the_engine_gains_is_no_slipping_clutch()
            throws IOException {
        assertThat(count(readSlip(0), EventKind.CLUTCH_SLIP)).isZero();
    }

    @Test
    void one_that_goes_on_by_its_smallest_steps_shows_the_slip() throws IOException {
        assertThat(count(readSlip(0.02), EventKind.CLUTCH_SLIP)).isOne();
    }

    @Test
    void a_speed_that_leaves_the_value_at_which_it_had_frozen_is_no_jump() throws IOException {
        assertThat(jumps(readLeap(55))).isZero();
    }

    @Test
    void one_that_leaves_a_steady_cruise_is() throws IOException {
        assertThat(jumps(readLeap(90))).isOne();
    }
}
