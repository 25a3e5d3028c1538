package witnessmark.triplog.event;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.triplog.DriveScripts;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.TrackGears;
import witnessmark.triplog.gear.TrackedRows;
import witnessmark.triplog.read.LogHead;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.ReadLog;
import witnessmark.triplog.signal.RowBlock;

class SteadyRowsTest {
    private static final GearTable TABLE = InventedTrucks.thirteen();

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({"10, 1", "10, 2", "2, 3", "0.2, 4"})
    void leaving_out_the_inside_of_steady_stretches_changes_no_event(double hertz, long seed) throws IOException {
        Path log = folder.resolve("drive.csv");
        DriveScripts.habits(TABLE, seed).writeCsv(log, Recording.usual(hertz), seed);

        List<HabitEvent> inStretches = events(log, Integer.MAX_VALUE);
        List<HabitEvent> rowByRow = events(log, 1);

        assertThat(rowByRow).isNotEmpty();
        assertThat(inStretches).isEqualTo(rowByRow);
    }

    /** The events when so many rows are handed over at once; a single one leaves no room for a stretch. */
    private static List<HabitEvent> events(Path log, int atOnce) {
        List<HabitEvent> events = new ArrayList<>();
        FindEvents[] finder = new FindEvents[1];
        TrackGears tracker = new TrackGears(TABLE, new TrackedRows() {
            @Override
            public void rows(RowBlock block, int[] inHand, double[] scatter, int from, int to) {
                int at = from;
                while (at < to) {
                    int until = (int) Math.min(to, (long) at + atOnce);
                    finder[0].rows(block, inHand, scatter, at, until);
                    at = until;
                }
            }

            @Override
            public void speedJump(long micros, long line, double fromKmh, double toKmh, double seconds) {
                finder[0].speedJump(micros, line, fromKmh, toKmh, seconds);
            }
        });
        finder[0] = new FindEvents(TABLE, HabitLimits.usual(), tracker::outputRpmPerKmh, events::add);
        ReadLog.read(LogHead.of(log), Optional.empty(), Progress.SILENT, tracker);
        tracker.end();
        finder[0].end();
        return events;
    }
}
