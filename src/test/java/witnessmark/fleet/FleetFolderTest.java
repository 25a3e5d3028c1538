package witnessmark.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.read.Progress;
import witnessmark.truck.ReadyTrucks;
import witnessmark.truck.TruckFolder;

class FleetFolderTest {
    @TempDir
    Path here;

    private Path fleet;

    @BeforeEach
    void make() throws IOException {
        fleet = Files.createDirectories(here.resolve("fleet"));
    }

    private void write(String path, String text) throws IOException {
        Path file = fleet.resolve(path);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    private List<String> logs() throws IOException {
        return FleetFolder.of(fleet).logs().stream().map(FleetFile::path).toList();
    }

    private String reason(String path) throws IOException {
        FleetFolder folder = FleetFolder.of(fleet);
        FleetTerms terms = new FleetTerms(
                folder.profiles(new TruckFolder(here.resolve("profiles"))),
                ReadyTrucks.yaml("thirteen-ratio"),
                folder.mappingsIn(fleet),
                null,
                HabitLimits.Load.UNKNOWN);
        FleetFile log = folder.logs().stream()
                .filter(f -> f.path().equals(path))
                .findFirst()
                .orElseThrow();
        return ((UncountedLog) new ReadFleetLog(terms).read(log, FleetFolder.bytes(fleet, log), Progress.SILENT))
                .reason();
    }

    @Test
    void logs_are_known_by_name_in_the_folder_and_one_below_and_hidden_ones_are_none() throws IOException {
        for (String path : List.of(
                "a_1.csv", "B/x.CSV", "B/x.Log.GZ", "B/two\nlines.txt", "B/%41 #1?.asc", "_u.csv", "0:1.candump")) {
            write(path, "x");
        }
        for (String path :
                List.of("B/.x.csv", ".x.csv", ".h/x.csv", "B/deep/x.csv", "B/x.csv.xz", "README.txt", "csv")) {
            write(path, "x");
        }
        Files.createDirectories(fleet.resolve("folder.csv"));
        Files.createDirectories(fleet.resolve("B/folder.csv"));

        assertThat(logs())
                .containsExactly(
                        "0:1.candump",
                        "B/%41 #1?.asc",
                        "B/two\nlines.txt",
                        "B/x.CSV",
                        "B/x.Log.GZ",
                        "_u.csv",
                        "a_1.csv");
        assertThat(new FleetFile("a\nb_c\nd.csv", 1, 1).truck()).isEqualTo("a\nb");
    }

    @Test
    void links_are_followed_but_not_back_to_the_folder() throws IOException {
        Path elsewhere = Files.createDirectories(here.resolve("elsewhere"));
        Files.writeString(elsewhere.resolve("x.csv"), "x");
        Files.createSymbolicLink(fleet.resolve("truck"), elsewhere);
        Files.createSymbolicLink(fleet.resolve("back"), fleet);
        Files.createSymbolicLink(fleet.resolve("up"), here);

        assertThat(logs()).containsExactly("truck/x.csv");
        assertThat(FleetFolder.of(fleet).unlisted())
                .extracting(UncountedLog::truck, UncountedLog::path, UncountedLog::reason)
                .containsExactly(
                        tuple(
                                "back",
                                "back/",
                                "this folder cannot be listed (it leads back to the folder of the logs)"),
                        tuple("up", "up/", "this folder cannot be listed (it leads back to the folder of the logs)"));
    }

    @Test
    @Timeout(value = 60, unit = TimeUnit.SECONDS)
    void what_cannot_be_opened_is_told_of_without_its_place_and_a_pipe_keeps_nobody_waiting() throws Exception {
        Files.createSymbolicLink(fleet.resolve("gone.csv"), fleet.resolve("nowhere"));
        Files.createSymbolicLink(fleet.resolve("loop.csv"), fleet.resolve("loop.csv"));
        assertThat(new ProcessBuilder("mkfifo", fleet.resolve("pipe.csv").toString())
                        .start()
                        .waitFor())
                .isZero();

        assertThat(reason("gone.csv"))
                .isEqualTo("cannot be read (it is gone, or a link that leads nowhere); check the file, and that you may"
                        + " read it");
        assertThat(reason("loop.csv")).startsWith("cannot be read (").doesNotContain(fleet.toString());
        assertThat(reason("pipe.csv")).startsWith("cannot be read (it is no plain file);");
    }

    @Test
    void a_name_that_lost_letters_is_told_of() throws IOException {
        write("a\uFFFD.csv", "x");

        assertThat(reason("a\uFFFD.csv"))
                .startsWith("its name has letters that this computer's character set does not know");
    }

    @Test
    void a_mapping_or_profile_that_cannot_be_read_holds_up_its_own_logs_alone() throws IOException {
        write("wide/x.csv", "x");
        Files.write(fleet.resolve("wide/mapping.yaml"), new byte[] {(byte) 0xFF, (byte) 0xFE});
        write("large/x.csv", "x");
        write("large/mapping.yaml", "#".repeat(400_001));
        write("gone/x.csv", "x");
        Files.createSymbolicLink(fleet.resolve("gone/mapping.yaml"), fleet.resolve("nowhere"));
        write("own/x.csv", "x");
        Files.createDirectories(here.resolve("profiles"));
        Files.write(here.resolve("profiles/own.yaml"), new byte[] {(byte) 0xFF, (byte) 0xFE});
        write("other/x.csv", "");

        assertThat(reason("wide/x.csv")).isEqualTo("its mapping file cannot be read (it is not UTF-8 text)");
        assertThat(reason("large/x.csv")).isEqualTo("its mapping file cannot be read (it has more than 400000 bytes)");
        assertThat(reason("gone/x.csv"))
                .isEqualTo("its mapping file cannot be read (it is gone, or a link that leads nowhere)");
        assertThat(reason("own/x.csv"))
                .startsWith("its truck's profile cannot be read (")
                .contains("is not UTF-8 text");
        assertThat(reason("other/x.csv")).startsWith("the file is empty");
    }

    @Test
    void a_place_is_in_the_folder_by_whatever_way() throws IOException {
        Path link = Files.createSymbolicLink(here.resolve("link"), fleet);

        assertThat(FleetFolder.holds(fleet, fleet)).isTrue();
        assertThat(FleetFolder.holds(fleet, link.resolve("not/yet"))).isTrue();
        assertThat(FleetFolder.holds(link, fleet.resolve("x/../y"))).isTrue();
        assertThat(FleetFolder.holds(fleet, here.resolve("fleet-tables"))).isFalse();
        assertThat(FleetFolder.holds(fleet, fleet.resolve("../out"))).isFalse();
    }

    @Test
    void a_folder_that_is_none_says_so() {
        assertThatThrownBy(() -> FleetFolder.of(here.resolve("nowhere"))).isInstanceOf(NoSuchFileException.class);
    }
}
