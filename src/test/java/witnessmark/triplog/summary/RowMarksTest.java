package witnessmark.triplog.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.triplog.DriveScripts;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.ReadTrip;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.TripRequest;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;

class RowMarksTest {
    private final GearTable table = InventedTrucks.thirteen();

    @TempDir
    private Path folder;

    private Path drive(int seed) {
        Path file = folder.resolve("drive-" + seed + ".csv");
        DriveScripts.proper(table, seed, 8).writeCsv(file, Recording.usual(10), seed);
        return file;
    }

    private RecordedTimes times(Path file) {
        return ReadTrip.read(TripRequest.of(file, table), Progress.SILENT).times();
    }

    /** The rows from one share of the drive to another, with a header of their own. */
    private Path part(Path drive, double from, double to) throws IOException {
        List<String> lines = Files.readAllLines(drive);
        List<String> part = new ArrayList<>(List.of(lines.get(0)));
        part.addAll(lines.subList(1 + (int) (from * (lines.size() - 1)), 1 + (int) (to * (lines.size() - 1))));
        return Files.write(folder.resolve("part-" + from + "-" + to + ".csv"), part);
    }

    @ParameterizedTest
    @CsvSource({"0, 0.5", "0.5, 1", "0.3, 0.6", "0.01, 0.99"})
    void a_part_of_a_log_without_dates_is_known_again(double from, double to) throws IOException {
        Path drive = drive(1);

        assertThat(times(part(drive, from, to))
                        .marks()
                        .isSameDriving(times(drive).marks()))
                .isTrue();
    }

    /** The same rows exported twice, with dates and with seconds from the beginning. */
    @Test
    void a_log_is_known_again_in_one_whose_rows_bear_other_times() throws IOException {
        Path drive = drive(3);
        List<String> lines = new ArrayList<>(Files.readAllLines(drive));
        for (int i = 1; i < lines.size(); i++) {
            String[] row = lines.get(i).split(",", 2);
            long micros = Math.round(Double.parseDouble(row[0]) * 1e6);
            lines.set(i, Instant.parse("2026-03-02T06:00:00Z").plus(micros, ChronoUnit.MICROS) + "," + row[1]);
        }
        RecordedTimes dated = times(Files.write(folder.resolve("dated.csv"), lines));

        assertThat(dated.spans()).allMatch(TimeSpan::isDated);
        assertThat(dated.marks().isSameDriving(times(drive).marks())).isTrue();
        assertThat(dated.marks().isSameDriving(times(drive(4)).marks())).isFalse();
    }

    @Test
    void two_parts_are_the_same_driving_only_where_they_overlap() throws IOException {
        Path drive = drive(2);
        RowMarks first = times(part(drive, 0, 0.5)).marks();

        assertThat(first.isSameDriving(times(part(drive, 0.5, 1)).marks())).isFalse();
        assertThat(first.isSameDriving(times(part(drive, 0.2, 0.7)).marks())).isTrue();
    }

    @Test
    void drives_alike_are_told_apart() {
        List<RowMarks> marks = new ArrayList<>();
        for (int seed = 11; seed < 17; seed++) {
            marks.add(times(drive(seed)).marks());
        }

        for (RowMarks one : marks) {
            assertThat(one.hashes()).hasSizeGreaterThan(10);
            assertThat(marks.stream().filter(one::isSameDriving)).containsExactly(one);
        }
    }

    @Test
    void what_is_no_mark_is_refused() {
        assertThatThrownBy(() -> new RowMarks(List.of("0123")))
                .hasMessageContaining("'0123' is not sixteen hexadecimal digits");
    }
}
