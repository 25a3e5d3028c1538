package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.SimulatedDrive.Style;
import witnessmark.triplog.event.EventFigure;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;

/** The range follows its knob when the lever comes out: at that road speed it moved. Common practice, no source. */
class RangeMovedSpeedTest {
    private static final GearTable TABLE = InventedTrucks.thirteen();
    private static final int SPEED = 2;
    private static final int RANGE = 7;
    private static final int LEVER = 8;

    @TempDir
    private Path folder;

    /** From sixth to fourth at 1.3 times the ceiling of 27 km/h. */
    private List<String> rows() throws IOException {
        SimulatedDrive drive = new SimulatedDrive(TABLE, 9);
        drive.stand(5);
        drive.start("1");
        for (String gear : List.of("2", "3", "4", "5", "6")) {
            drive.driveTo(1300 / InventedTrucks.engineRpm(TABLE, gear, 1), 0.6).shift(gear, Style.DOUBLE);
        }
        drive.driveTo(35, 0.5)
                .drive(5, 0, 30)
                .shift("4", Style.DOUBLE)
                .drive(5, 0, 20)
                .stop();
        Path file = folder.resolve("drive.csv");
        drive.writeCsv(file, Recording.usual(10), 3);
        return Files.readAllLines(file);
    }

    private HabitEvent lowRange(List<String> rows) throws IOException {
        Path file = Files.write(folder.resolve("changed.csv"), rows);
        return ReadTrip.read(TripRequest.of(file, TABLE), Progress.SILENT).events().stream()
                .filter(e -> e.kind() == EventKind.LOW_RANGE_ABOVE_CEILING)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void knob_and_lever_tell_it_and_where_that_row_has_no_speed_the_row_before_does() throws IOException {
        List<String> rows = rows();
        List<String> blank = new ArrayList<>();
        String[] before = rows.get(0).split(",");
        for (String row : rows) {
            String[] cells = row.split(",", -1);
            boolean moves = cells[LEVER].equals("0") && !before[LEVER].equals("0") && cells[RANGE].equals("0");
            before = cells.clone();
            cells[SPEED] = moves ? "" : cells[SPEED];
            blank.add(String.join(",", cells));
        }

        assertThat(blank).isNotEqualTo(rows);
        for (List<String> read : List.of(rows, blank)) {
            HabitEvent event = lowRange(read);
            assertThat(event.sentence()).doesNotContain("at least");
            assertThat(event.figures().get(EventFigure.RANGE_MOVED_KMH))
                    .isCloseTo(0.97 * 35, Percentage.withPercentage(2));
        }
    }

    @Test
    void without_them_it_is_a_lower_bound_and_said_to_be_one() throws IOException {
        List<String> without = rows().stream()
                .map(row -> row.replaceFirst(",[^,]*,[^,]*$", ""))
                .toList();

        assertThat(lowRange(without).sentence()).contains("the range moved at at least");
    }
}
