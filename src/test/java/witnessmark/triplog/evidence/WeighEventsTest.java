package witnessmark.triplog.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.DriveScripts;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.ReadTrip;
import witnessmark.triplog.SimulatedDrive;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.TripRequest;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;

class WeighEventsTest {
    private final GearTable table = InventedTrucks.thirteen();

    @TempDir
    private Path folder;

    private Map<String, LogEvidence> weigh(SimulatedDrive drive, double hertz) {
        Path file = folder.resolve("drive.csv");
        drive.writeCsv(file, Recording.usual(hertz), 3);
        TripResult trip = ReadTrip.read(TripRequest.of(file, table).withHash(), Progress.SILENT);
        List<LogEvidence> evidence = WeighEvents.weigh(
                trip.summary(),
                trip.events(),
                table,
                List.of(trip.report().sha256().orElseThrow()));
        return evidence.stream().collect(Collectors.toMap(LogEvidence::finding, Function.identity()));
    }

    @Test
    void events_make_a_finding_present_and_carry_the_hash_of_the_log() {
        LogEvidence evidence = weigh(DriveScripts.habits(table, 31), 10).get("log-standing-start-high-range");

        assertThat(evidence.state()).isEqualTo(LogEvidence.State.PRESENT);
        assertThat(evidence.factor()).isGreaterThan(3).isLessThanOrEqualTo(100);
        assertThat(evidence.fileHashes()).singleElement().asString().hasSize(64);
        assertThat(evidence.sentence()).contains("start from rest in high range in");
    }

    @Test
    void many_proper_starts_speak_against_the_habit_and_few_say_little() {
        LogEvidence many = weigh(DriveScripts.proper(table, 4, 40), 10).get("log-standing-start-high-range");
        LogEvidence few = weigh(DriveScripts.proper(table, 4, 2), 10).get("log-standing-start-high-range");

        assertThat(many.state()).isEqualTo(LogEvidence.State.ABSENT);
        assertThat(few.state()).isEqualTo(LogEvidence.State.UNSURE);
        assertThat(many.factor()).isLessThan(few.factor());
    }

    @Test
    void no_event_in_the_chances_weighs_as_the_closed_form_says() {
        LogEvidence evidence = weigh(DriveScripts.proper(table, 4, 8), 10).get("log-standing-start-high-range");

        // 8 starts: (1 / (1 + 0.95 x 0.08 x 8)) / (1 / (1 + 0.002 x 8))
        assertThat(evidence.factor()).isEqualTo(1.016 / 1.608, within(1e-9));
    }

    @Test
    void what_a_log_cannot_show_makes_no_evidence() {
        Map<String, LogEvidence> evidence = weigh(DriveScripts.habits(table, 31), 0.2);

        assertThat(evidence)
                .doesNotContainKeys(
                        "log-standing-start-high-range",
                        "log-range-low-above-ceiling",
                        "log-overdrive-to-low-pair",
                        "log-range-moved-in-neutral");
        assertThat(evidence.get("log-oil-temperature-high").state()).isEqualTo(LogEvidence.State.PRESENT);
    }

    @Test
    void overspeed_in_one_ratio_is_told_from_overspeed_after_a_downshift() {
        SimulatedDrive runaway = new SimulatedDrive(table, 5);
        runaway.stand(5)
                .start("2")
                .driveTo(15, 0.5)
                .shift("4", SimulatedDrive.Style.DOUBLE)
                .drive(5, 0, 20);
        runaway.runAway(1.25).drive(10, 0, 20).stop();

        Map<String, LogEvidence> evidence = weigh(runaway, 10);

        assertThat(evidence.get("log-overspeed-one-ratio").count()).isEqualTo(1);
        assertThat(evidence.get("log-overspeed-after-downshift").count()).isZero();
    }
}
