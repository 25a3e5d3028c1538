package witnessmark.shell.run;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;

/** Where the stack trace of a fault inside the program goes, so that it is not thrown at the user. */
public final class FaultLog {
    private FaultLog() {}

    /** Adds the fault to the user's own log; returns the sentence that says where it is. */
    public static String write(Throwable fault) {
        StringWriter trace = new StringWriter();
        fault.printStackTrace(new PrintWriter(trace));
        String text = Instant.now() + "\n" + trace + "\n";
        try {
            return said(append(Path.of(System.getProperty("user.home"), ".witnessmark", "faults.log"), text));
        } catch (IOException noHome) {
            try {
                // A new file of a name that nobody can have waited for, since others may write to this folder.
                return said(append(Files.createTempFile("witnessmark-faults-", ".log"), text));
            } catch (IOException e) {
                return "Details could not be written.";
            }
        }
    }

    private static Path append(Path file, String text) throws IOException {
        if (!Files.isDirectory(file.getParent())) {
            Files.createDirectories(file.getParent());
            ownerOnly(file.getParent(), "rwx------");
        }
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            Files.createFile(file);
            ownerOnly(file, "rw-------");
        }
        Files.writeString(file, text, StandardOpenOption.APPEND, LinkOption.NOFOLLOW_LINKS);
        return file;
    }

    private static void ownerOnly(Path path, String rights) throws IOException {
        if (path.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(rights));
        }
    }

    private static String said(Path file) {
        return "Details are in " + file + ".";
    }
}
