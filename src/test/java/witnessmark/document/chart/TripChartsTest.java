package witnessmark.document.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.DriveScripts;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.ReadTrip;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.TripRequest;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;

class TripChartsTest {
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

    private String timeline() {
        return TripTimelineChart.svg("Trip", trip.timeline(), trip.events(), ChartLabels.PLAIN, 900, 420);
    }

    private String map() {
        return SpeedMapChart.svg("Speeds", trip.speedMap(), table, trip.factor().factor(), 700, 500);
    }

    @Test
    void both_charts_are_well_formed_and_the_same_each_time() throws Exception {
        for (String svg : List.of(timeline(), map())) {
            var document = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
            assertThat(document.getDocumentElement().getTagName()).isEqualTo("svg");
        }
        assertThat(timeline()).isEqualTo(timeline());
        assertThat(map()).isEqualTo(map());
    }

    @Test
    void the_timeline_says_its_units_and_marks_the_events() {
        assertThat(timeline()).contains("km/h", "rpm", "covered time (min)", ">event<");
    }
}
