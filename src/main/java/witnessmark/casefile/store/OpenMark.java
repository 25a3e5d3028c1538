package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A file that lies beside the database while it is open, and says in which run of the machine. If it is found in a later
 * run, the machine went down while the database was open, and its file may be damaged without showing it: of what was
 * not yet synced any page may be missing. A shell that was only killed does no such harm.
 */
final class OpenMark {
    private final Path file;
    private final Disk disk;

    OpenMark(Path store, Disk disk) {
        this.file = store.resolve("cases.open");
        this.disk = disk;
    }

    /** Whether the machine went down while the database was open, or may have. */
    boolean isOfAnotherRun() throws IOException {
        if (!Files.exists(file)) {
            return false;
        }
        String run = disk.run();
        return run.isEmpty() || !Files.readString(file).strip().equals(run);
    }

    /** On the disk when this returns. */
    void set() throws IOException {
        if (Files.exists(file) && !isOfAnotherRun()) {
            return;
        }
        try (FileChannel out = disk.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            out.truncate(0);
            out.write(ByteBuffer.wrap((disk.run() + "\n").getBytes(UTF_8)), 0);
            out.force(true);
        }
        OwnerOnly.sync(file.getParent());
    }

    void clear() throws IOException {
        disk.delete(file);
    }
}
