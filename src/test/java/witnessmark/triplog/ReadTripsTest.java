package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.Threads;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.UnreadableLog;
import witnessmark.triplog.summary.ComparePeriods;
import witnessmark.triplog.summary.LogVerdict;

class ReadTripsTest {
    private final GearTable table = InventedTrucks.ten();

    @TempDir
    private Path folder;

    private void write(String name, SimulatedDrive drive) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        drive.writeCsv(file, Recording.usual(10), 9);
    }

    private List<TruckResult> read(Progress progress) {
        return ReadTrips.read(List.of(folder), "none", TripTerms.of(truck -> table), progress);
    }

    @Test
    void a_folder_is_summed_up_truck_by_truck_and_a_bad_file_spoils_nothing() throws IOException {
        write("unit-7/monday.csv", DriveScripts.proper(table, 1, 2));
        write("unit-7/tuesday.csv", DriveScripts.proper(table, 2, 3));
        write("unit-9_monday.csv", DriveScripts.habits(table, 41));
        Files.write(folder.resolve("unit-9_tuesday.csv"), new byte[4000]);

        List<TruckResult> trucks = read(Progress.SILENT);

        assertThat(trucks).extracting(TruckResult::truck).containsExactly("unit-7", "unit-9");
        TruckResult seven = trucks.get(0);
        assertThat(seven.trips()).hasSize(2);
        assertThat(seven.summary().km())
                .isEqualTo(
                        seven.trips().stream()
                                .mapToDouble(t -> t.summary().km())
                                .sum(),
                        within(1e-9));
        assertThat(seven.summary().verdict(EventKind.START_IN_HIGH_RANGE).chances())
                .isEqualTo(5);
        assertThat(trucks.get(1).failures())
                .singleElement()
                .asString()
                .contains("unit-9_tuesday.csv", "not a text file");
        assertThat(trucks.get(1)
                        .summary()
                        .verdict(EventKind.START_IN_HIGH_RANGE)
                        .state())
                .isEqualTo(LogVerdict.State.SEEN);
    }

    @Test
    void a_stopped_job_keeps_what_was_read_and_marks_it() throws IOException {
        write("unit-1/a.csv", DriveScripts.habits(table, 42));

        List<TruckResult> trucks = read((done, total) -> done < 300_000);

        assertThat(trucks.get(0).isPartial()).isTrue();
        assertThat(trucks.get(0).summary().coveredHours()).isGreaterThan(0.05);
    }

    @Test
    void two_periods_are_compared_kind_by_kind_and_blind_ones_are_not() throws IOException {
        write("before/a.csv", DriveScripts.habits(table, 43));
        write("after/a.csv", DriveScripts.proper(table, 44, 60));
        List<TruckResult> periods = read(Progress.SILENT);

        List<ComparePeriods.Change> changes =
                ComparePeriods.compare(periods.get(1).summary(), periods.get(0).summary());

        ComparePeriods.Change overspeed = changes.get(EventKind.ENGINE_OVERSPEED.ordinal());
        assertThat(overspeed.rates().orElseThrow().countAfter()).isZero();
        assertThat(overspeed.outcome()).isEqualTo(ComparePeriods.Outcome.FELL);
        ComparePeriods.Change none = changes.get(EventKind.OVERDRIVE_TO_LOW.ordinal());
        assertThat(none.outcome()).isEqualTo(ComparePeriods.Outcome.NOT_COMPARED);
        assertThat(none.obstacle()).contains("the period before", "no overdrive");
    }

    @Test
    void a_blind_log_neither_hides_what_another_shows_nor_adds_chances() throws IOException {
        write("unit-1/fast.csv", DriveScripts.proper(table, 5, 4));
        LogVerdict alone = read(Progress.SILENT).get(0).summary().verdict(EventKind.START_IN_HIGH_RANGE);

        DriveScripts.proper(table, 6, 60).writeCsv(folder.resolve("unit-1/slow.csv"), Recording.usual(0.2), 9);
        TruckResult both = read(Progress.SILENT).get(0);

        LogVerdict together = both.summary().verdict(EventKind.START_IN_HIGH_RANGE);
        assertThat(both.trips()).hasSize(2);
        assertThat(together.state()).isEqualTo(LogVerdict.State.NOT_SEEN_THOUGH_POSSIBLE);
        assertThat(together.chances()).isEqualTo(alone.chances()).isEqualTo(4);
    }

    @Test
    void short_logs_of_one_truck_add_up_to_a_distance_that_says_something() throws IOException {
        for (int day = 1; day <= 4; day++) {
            write("unit-1/day-" + day + ".csv", DriveScripts.proper(table, day, 1));
        }
        TruckResult truck = read(Progress.SILENT).get(0);

        assertThat(truck.trips()).allSatisfy(t -> assertThat(t.summary().km()).isLessThan(2));
        assertThat(truck.summary().km()).isGreaterThan(2);
        assertThat(truck.summary().verdict(EventKind.COAST_IN_NEUTRAL).state())
                .isEqualTo(LogVerdict.State.NOT_SEEN_THOUGH_POSSIBLE);
    }

    @Test
    void reading_tracking_and_looking_side_by_side_come_to_the_same_as_one_after_the_other() throws IOException {
        write("a.csv", DriveScripts.habits(table, 45));
        TripRequest request = TripRequest.of(folder.resolve("a.csv"), table);

        TripResult oneByOne = ReadTrip.read(request, Progress.SILENT, Threads.THE_READERS);
        TripResult sideBySide = ReadTrip.read(request, Progress.SILENT, Threads.THEIR_OWN);

        assertThat(oneByOne.events()).hasSizeGreaterThan(10);
        assertThat(sideBySide.events()).isEqualTo(oneByOne.events());
        assertThat(sideBySide.summary()).isEqualTo(oneByOne.summary());
        assertThat(sideBySide.timeline()).isEqualTo(oneByOne.timeline());
        assertThat(sideBySide.factor()).isEqualTo(oneByOne.factor());
    }

    @Test
    void what_goes_wrong_on_another_thread_is_thrown_at_the_reader() throws IOException {
        write("a.csv", DriveScripts.habits(table, 46));
        TripRequest plain = TripRequest.of(folder.resolve("a.csv"), table);
        TripRequest request =
                new TripRequest(plain.file(), table, plain.limits(), plain.mapping(), false, Optional.of(second -> {
                    throw new IllegalStateException("no room for " + second.inHand());
                }));

        assertThatThrownBy(() -> ReadTrip.read(request, Progress.SILENT, Threads.THEIR_OWN))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("no room for");
    }

    @Test
    void a_log_in_the_folders_of_two_trucks_counts_for_the_first_and_is_told_of() throws IOException {
        write("unit-1/a.csv", DriveScripts.proper(table, 1, 2));
        write("unit-2/b.csv", DriveScripts.proper(table, 2, 2));
        Files.copy(folder.resolve("unit-1/a.csv"), folder.resolve("unit-2/a.csv"));

        List<TruckResult> trucks = read(Progress.SILENT);

        assertThat(trucks.get(0).failures()).isEmpty();
        assertThat(trucks.get(1).trips()).hasSize(1);
        assertThat(trucks.get(1).failures())
                .singleElement()
                .asString()
                .endsWith("a.csv: holds the same rows as a.csv of truck unit-1; a log is of one truck, leave it out of"
                        + " the other");
    }

    @Test
    void a_log_and_its_packed_copy_in_one_folder_are_one_log_of_one_truck() throws IOException {
        write("unit-1_a.csv", DriveScripts.proper(table, 1, 2));
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(folder.resolve("unit-1_a.csv.gz")))) {
            Files.copy(folder.resolve("unit-1_a.csv"), out);
        }

        assertThat(read(Progress.SILENT)).singleElement().satisfies(truck -> {
            assertThat(truck.truck()).isEqualTo("unit-1");
            assertThat(truck.trips()).hasSize(1);
            assertThat(truck.failures())
                    .singleElement()
                    .asString()
                    .contains("unit-1_a.csv.gz: covers the same driving as unit-1_a.csv");
        });
    }

    /** Dated logs by their times; undated ones, which all begin at 0, by their rows. */
    @Test
    void the_same_driving_counts_once_whether_it_is_dated_or_not() throws IOException {
        write("unit-1/a.csv", DriveScripts.proper(table, 1, 2));
        write("unit-1/b.csv", DriveScripts.proper(table, 2, 2));
        Files.copy(folder.resolve("unit-1/a.csv"), folder.resolve("unit-1/again.csv"));
        Files.createDirectories(folder.resolve("unit-2"));
        DriveScripts.proper(table, 3, 2).writeCandump(folder.resolve("unit-2/a.log"), Recording.usual(10), 9);
        List<String> frames = Files.readAllLines(folder.resolve("unit-2/a.log"));
        Files.write(folder.resolve("unit-2/later-half.log"), frames.subList(frames.size() / 2, frames.size()));

        List<TruckResult> trucks = read(Progress.SILENT);

        assertThat(trucks.get(0).trips()).hasSize(2);
        assertThat(trucks.get(0).failures())
                .singleElement()
                .asString()
                .endsWith("again.csv: covers the same driving as a.csv; it would count twice, leave it out");
        assertThat(trucks.get(1).trips()).hasSize(1);
        assertThat(trucks.get(1).failures()).singleElement().asString().contains("later-half.log: covers the same");
    }

    @Test
    void a_log_without_a_row_that_can_be_used_is_told_of_with_the_reason() throws IOException {
        Files.writeString(folder.resolve("unit-1_a.log"), "(1700000000.010000) can0 0CF00400#ZZ\n".repeat(2));
        Files.writeString(folder.resolve("unit-1_b.log"), "(1700000000.010000) can0 18FEE900#FFFFFFFFFFFFFFFF\n");

        TruckResult truck = read(Progress.SILENT).get(0);

        assertThat(truck.trips()).isEmpty();
        assertThat(truck.failures())
                .satisfiesExactly(
                        a -> assertThat(a).contains("unit-1_a.log: no row of it can be used: 2 x "),
                        b -> assertThat(b).contains("unit-1_b.log: no row of it can be used: no frame of the groups"));
    }

    @Test
    void a_folder_without_logs_is_refused() {
        assertThatThrownBy(() -> read(Progress.SILENT))
                .isInstanceOf(UnreadableLog.class)
                .hasMessageContaining("no log files in this folder");
    }
}
