package witnessmark.fleet.spark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import witnessmark.fleet.FleetTable;

/** The packaged program of one machine, whose tables are the measure. */
record OneMachine(Path folder) {

    /** Runs {@code log fleet} on the logs and gives the folder of its tables. */
    Path tables(Path logs, String... more) throws IOException, InterruptedException {
        Path jar = Path.of(System.getProperty("program.jar"));
        assertThat(jar).as("the program, built before by: mvn package").isRegularFile();
        Path out = Files.createTempDirectory(folder, "one-machine-");
        List<String> words = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Dfile.encoding=UTF-8",
                "-Dsun.jnu.encoding=UTF-8",
                "-jar",
                jar.toString(),
                "--store",
                folder.resolve("store").toString(),
                "log",
                "fleet",
                logs.toString(),
                "--out",
                out.toString()));
        words.addAll(List.of(more));
        Path said = out.resolve("said.txt");
        ProcessBuilder program =
                new ProcessBuilder(words).redirectErrorStream(true).redirectOutput(said.toFile());
        program.environment().put("LC_ALL", "C.UTF-8");
        assertThat(program.start().waitFor()).as(Files.readString(said)).isZero();
        return out;
    }

    /** Holds the tables of a job against those of this machine, byte for byte. */
    static void assertSame(Path job, Path one) throws IOException {
        for (FleetTable table : FleetTable.values()) {
            String name = table.fileName() + ".csv";
            assertThat(Files.readString(job.resolve(name))).as(name).isEqualTo(Files.readString(one.resolve(name)));
            assertThat(job.resolve(name)).as(name).hasSameBinaryContentAs(one.resolve(name));
        }
    }
}
