package witnessmark.packaged;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Runs the packaged program as a user does, in a process of its own. */
final class Program {
    private static final Path UNPACKED = Path.of("target/dist/witnessmark").toAbsolutePath();
    private static final Path JAR = Path.of("target/witnessmark.jar").toAbsolutePath();

    private final List<String> start;

    /** What a run left behind. */
    record Run(int code, String out, String err) {}

    private Program(List<String> start) {
        this.start = start;
    }

    /** The unpacked form with its start script. */
    static Program unpacked(Path store) {
        return at(UNPACKED, store);
    }

    /** An unpacked form that lies elsewhere, by its start script. */
    static Program at(Path script, Path store) {
        return new Program(List.of(script.toString(), "--store", store.toString(), "--who", "tester"));
    }

    /** The unpacked form on a shared store; what else is kept lies in the folder. */
    static Program shared(Path folder, Path database) {
        return new Program(
                List.of(UNPACKED.toString(), "--store", folder.toString(), "--database", database.toString()));
    }

    /** The one jar. */
    static Program jar() {
        return new Program(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", JAR.toString()));
    }

    Run run(String... words) {
        try {
            Path out = Files.createTempFile("out", ".txt");
            Path err = Files.createTempFile("err", ".txt");
            Process process = start(words)
                    .redirectOutput(out.toFile())
                    .redirectError(err.toFile())
                    .redirectInput(
                            ProcessBuilder.Redirect.from(Path.of("/dev/null").toFile()))
                    .start();
            if (!process.waitFor(120, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException("did not end: " + String.join(" ", words));
            }
            return new Run(
                    process.exitValue(),
                    Files.readString(out, StandardCharsets.UTF_8),
                    Files.readString(err, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    ProcessBuilder start(String... words) {
        List<String> command = new ArrayList<>(start);
        command.addAll(List.of(words));
        return new ProcessBuilder(command);
    }
}
