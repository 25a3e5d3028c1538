package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.SimulatedDrive.Style;
import witnessmark.triplog.event.EventFigure;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.evidence.LogRecord.Tally;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;

/**
 * From an overdrive to low range: with the splitter returning the range synchronizer slips (R - s)/(R - 1) times as much as
 * from direct (rigid-body mechanics, from memory). An act is only what goes beyond that shift from direct at the ceiling.
 */
class OverdriveToLowTest {
    private static final GearTable TABLE = InventedTrucks.thirteen();
    /** 2000 rpm / (3.84 x 312 x 3.70 / 60), the ceiling of fourth. */
    private static final double CEILING_KMH = 27.07;

    @TempDir
    private Path folder;

    private static double landingKmh(String name) {
        double ratio = TABLE.gears().stream()
                .filter(g -> g.name().equals(name))
                .findFirst()
                .orElseThrow()
                .ratio();
        return 1150 / (TABLE.outputRpmPerKmh() * ratio);
    }

    private List<HabitEvent> shiftDown(double shareOfCeiling) {
        return drive(shareOfCeiling).events();
    }

    private TripResult drive(double shareOfCeiling) {
        SimulatedDrive drive = new SimulatedDrive(TABLE, 9);
        drive.stand(5);
        drive.start("1");
        for (String gear : List.of("2", "3", "4", "5", "5-over")) {
            drive.driveTo(landingKmh(gear), 0.6).shift(gear, Style.DOUBLE);
        }
        drive.driveTo(shareOfCeiling * CEILING_KMH, 0.5).drive(5, 0, 30);
        drive.shift("4", Style.DOUBLE).drive(5, 0, 20).stop();
        Path file = folder.resolve("drive.csv");
        drive.writeCsv(file, Recording.usual(10), 3);
        return ReadTrip.read(TripRequest.of(file, TABLE), Progress.SILENT);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.6, 0.8, 0.9})
    void a_shift_down_below_the_ceiling_is_driving_as_any_other(double share) {
        assertThat(shiftDown(share)).isEmpty();
    }

    @Test
    void at_the_ceiling_the_overdrive_makes_it_an_act_that_direct_would_not_be() {
        List<HabitEvent> events = shiftDown(1);

        assertThat(events).extracting(HabitEvent::kind).containsExactly(EventKind.OVERDRIVE_TO_LOW);
        double slip = (3.84 - 0.85) / (3.84 - 1);
        double over = events.get(0).figures().get(EventFigure.CEILING_MULTIPLE);
        assertThat(over).isBetween(0.97, 1.02);
        assertThat(events.get(0).figures().get(EventFigure.ENERGY_MULTIPLE))
                .isCloseTo(slip * slip * over * over, within(1e-6));
    }

    /** One act: low range too fast, from an overdrive, with the overspeed that followed. It answers both questions. */
    @Test
    void above_the_ceiling_it_counts_for_the_range_and_for_the_overdrive_and_is_one_act() {
        TripResult trip = drive(1.25);

        assertThat(trip.events())
                .extracting(HabitEvent::kind)
                .contains(EventKind.LOW_RANGE_ABOVE_CEILING, EventKind.OVERDRIVE_TO_LOW);
        assertThat(trip.events()).extracting(e -> e.act().number()).containsOnly(1);
        Map<String, Tally> tallies = trip.record().tallies();
        assertThat(tallies.get("log-range-low-above-ceiling").count()).isEqualTo(1);
        assertThat(tallies.get("log-overdrive-to-low-pair").count()).isEqualTo(1);
        assertThat(tallies.get("log-overdrive-to-low-pair").open()).isZero();
        assertThat(tallies.get("log-overspeed-after-downshift").count()).isZero();
    }
}
