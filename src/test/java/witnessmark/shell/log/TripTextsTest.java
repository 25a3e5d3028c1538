package witnessmark.shell.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.DriveScripts;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.ReadTrip;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.TripRequest;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;

/** What a read trip looks like in letters and in rows. */
class TripTextsTest {
    private final GearTable table = InventedTrucks.thirteen();

    @TempDir
    private Path folder;

    private TripResult trip;

    @BeforeEach
    void readTrip() {
        Path file = folder.resolve("drive.csv");
        DriveScripts.habits(table, 51).writeCsv(file, Recording.usual(10), 1);
        trip = ReadTrip.read(TripRequest.of(file, table), Progress.SILENT);
    }

    @Test
    void the_terminal_versions_fit_their_width_and_show_the_gears() {
        List<String> lines = TripCharts.timeline(trip.timeline(), table, 80, 8, Unit.KILOMETRE_PER_HOUR);

        assertThat(lines).hasSize(12).allMatch(l -> l.length() <= 86);
        assertThat(lines.get(9)).matches("gear  [L0-9nseRp?]{80}");
        assertThat(TripCharts.speedMap(trip.speedMap(), 73, Unit.KILOMETRE_PER_HOUR))
                .allMatch(l -> l.length() <= 80)
                .anyMatch(l -> l.contains("@"));
    }

    @Test
    void tables_name_every_kind_and_every_event() {
        int columns = EventTable.header().split(",").length;
        assertThat(SummaryTable.rows("unit-1", false, trip.summary()))
                .hasSize(EventKind.values().length)
                .anyMatch(l -> l.startsWith("unit-1,no,start-in-high-range,seen,4,"));
        assertThat(trip.events()).isNotEmpty().allSatisfy(e -> assertThat(
                        EventTable.row("unit-1", "drive.csv", true, e).replaceAll("\"[^\"]*\"", "words"))
                .startsWith("unit-1,drive.csv,yes," + e.kind().id())
                .satisfies(row -> assertThat(row.split(",", -1)).hasSize(columns)));
    }
}
