package witnessmark.shell.run;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;

/** Where the stack trace of a fault inside the program goes, so that it is not thrown at the user. */
final class FaultLog {
    private FaultLog() {}

    /** Adds the fault to the file; returns the sentence that says where it is. */
    static String write(Throwable fault) {
        Path file = Path.of(System.getProperty("java.io.tmpdir"), "witnessmark-faults.log");
        StringWriter trace = new StringWriter();
        fault.printStackTrace(new PrintWriter(trace));
        try {
            Files.writeString(
                    file, Instant.now() + "\n" + trace + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
            return "Details are in " + file + ".";
        } catch (IOException e) {
            return "Details could not be written to " + file + ".";
        }
    }
}
