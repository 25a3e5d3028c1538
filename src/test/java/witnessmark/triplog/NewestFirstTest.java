package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.UnreadableLog;

/** Some loggers write the newest row first: the same drive must come out, with the lines as they stand in the file. */
class NewestFirstTest {
    private static final GearTable TABLE = InventedTrucks.thirteen();

    @TempDir
    private Path folder;

    private Path asWritten() {
        Path file = folder.resolve("drive.csv");
        DriveScripts.habits(TABLE, 22).writeCsv(file, Recording.usual(10), 11);
        return file;
    }

    private static List<String> newestFirst(Path file) throws IOException {
        List<String> rows = rows(file);
        Collections.reverse(rows);
        return rows;
    }

    private static List<String> rows(Path file) throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(file));
        return lines.subList(1, lines.size());
    }

    private Path write(String name, String header, List<String> rows, String lineEnd) throws IOException {
        List<String> lines = new ArrayList<>(List.of(header));
        lines.addAll(rows);
        return Files.writeString(folder.resolve(name), String.join(lineEnd, lines));
    }

    private static TripResult read(Path file) {
        return ReadTrip.read(TripRequest.of(file, TABLE).withHash(), Progress.SILENT);
    }

    private static void assertSameEvents(TripResult turned, TripResult usual, int lines) {
        assertThat(turned.report().newestFirst()).isTrue();
        assertThat(usual.report().newestFirst()).isFalse();
        assertThat(turned.summary().km()).isEqualTo(usual.summary().km());
        assertThat(turned.events().stream().map(HabitEvent::sentence))
                .hasSizeGreaterThan(20)
                .isEqualTo(usual.events().stream().map(HabitEvent::sentence).toList());
        for (int i = 0; i < usual.events().size(); i++) {
            HabitEvent one = turned.events().get(i);
            HabitEvent other = usual.events().get(i);
            // The header is line 1, so that row k of n stands on line k + 1, and turned round on line n - k + 2.
            assertThat(one.firstLine()).isEqualTo(lines + 3 - other.lastLine());
            assertThat(one.lastLine()).isEqualTo(lines + 3 - other.firstLine());
            assertThat(one.startMicros()).isEqualTo(other.startMicros());
        }
    }

    @Test
    void a_log_with_its_newest_row_first_shows_the_same_drive() throws IOException {
        Path file = asWritten();
        String header = Files.readAllLines(file).get(0);
        List<String> rows = newestFirst(file);

        TripResult usual = read(file);

        for (String lineEnd : List.of("\n", "\r\n")) {
            assertSameEvents(read(write("turned.csv", header, rows, lineEnd)), usual, rows.size());
        }
    }

    @Test
    void a_packed_one_does_too_and_its_hash_is_that_of_the_file_as_it_stands() throws IOException {
        Path file = asWritten();
        String header = Files.readAllLines(file).get(0);
        List<String> rows = newestFirst(file);
        Path plain = write("turned.csv", header, rows, "\n");
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (OutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(Files.readAllBytes(plain));
        }

        TripResult trip = read(Files.write(folder.resolve("turned.csv.gz"), packed.toByteArray()));

        assertSameEvents(trip, read(file), rows.size());
        assertThat(trip.report().sha256()).isEqualTo(read(plain).report().sha256());
    }

    /** Rows of five minutes, one a second, written by hand; 07:55 to 08:00 or over midnight. */
    private static List<String> fiveMinutes(int beginSecond) {
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            int second = (beginSecond + i) % 86_400;
            rows.add(String.format(
                    "%02d:%02d:%02d,%d,%d", second / 3600, second / 60 % 60, second % 60, 1200 + i % 7, 40 + i % 3));
        }
        return rows;
    }

    @Test
    void times_of_day_over_midnight_go_on_when_turned_round() throws IOException {
        List<String> rows = fiveMinutes(86_400 - 100);
        Collections.reverse(rows);

        TripResult trip = read(write("night.csv", "time,engine_rpm,speed_kmh", rows, "\n"));

        assertThat(trip.report().newestFirst()).isTrue();
        assertThat(trip.summary().coveredHours() * 3600).isBetween(298.0, 300.0);
        assertThat(trip.clock().setBack()).isZero();
    }

    @Test
    void a_line_that_is_broken_is_named_by_its_place_in_the_file() throws IOException {
        List<String> rows = fiveMinutes(30_000);
        Collections.reverse(rows);
        rows.set(3, "half a row");

        TripResult trip = read(write("broken.csv", "time,engine_rpm,speed_kmh", rows, "\n"));

        assertThat(trip.report().broken().get(0).firstLines()).containsExactly(5L);
    }

    @Test
    void rows_in_no_order_are_refused() throws IOException {
        List<String> rows = fiveMinutes(30_000);
        Collections.shuffle(rows, new Random(5));
        Path file = write("mixed.csv", "time,engine_rpm,speed_kmh", rows, "\n");

        assertThatThrownBy(() -> read(file))
                .isInstanceOf(UnreadableLog.class)
                .hasMessageContaining("in no order of time")
                .hasMessageContaining("sort the rows by time");
    }

    @Test
    void a_log_that_turns_in_the_middle_is_refused() throws IOException {
        List<String> rows = fiveMinutes(30_000);
        List<String> later = fiveMinutes(40_000);
        Collections.reverse(rows);
        rows.addAll(later);
        Path file = write("half.csv", "time,engine_rpm,speed_kmh", rows, "\n");

        assertThat(Arrays.asList(rows.get(0), rows.get(599))).containsExactly("08:24:59,1205,42", "11:11:39,1205,42");
        assertThatThrownBy(() -> read(file)).hasMessageContaining("in no order of time");
    }
}
