package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;

/**
 * A file that lies beside the database while it is open, and says in which run of the machine. If it is found in a later
 * run, the machine went down while the database was open, and its file may be damaged without showing it: of what was
 * not yet synced any page may be missing. Found in the same run, a shell was killed: single rows of the change it was at
 * can stand without the rest.
 */
final class OpenMark {
    private final Path file;
    private final Disk disk;

    OpenMark(Path store, Disk disk) {
        this.file = store.resolve("cases.open");
        this.disk = disk;
    }

    /** Whether whoever had the database open last did not close it. */
    boolean isSet() {
        return Files.exists(file);
    }

    /** Whether the machine went down while the database was open, or may have. */
    boolean isOfAnotherRun() throws IOException {
        if (!Files.exists(file)) {
            return false;
        }
        String run = disk.run();
        return run.isEmpty() || !line(0).equals(run);
    }

    /** Whether a shell set it for this very file, which is not the case in a copy of the folder. */
    boolean isOf(Path database) throws IOException {
        return Files.exists(file)
                && Files.exists(database)
                && !key(database).isEmpty()
                && line(1).equals(key(database));
    }

    /** Notes for which file it is set, when that is sure. */
    void claim(Path database) throws IOException {
        if (!isOf(database)) {
            write(disk.run() + "\n" + key(database) + "\n");
        }
    }

    private String line(int number) throws IOException {
        List<String> lines = Files.readAllLines(file);
        return lines.size() > number ? lines.get(number).strip() : "";
    }

    /** What the system knows the file by, whatever its name; empty where it knows it by the name alone. */
    private static String key(Path database) throws IOException {
        Object key = Files.readAttributes(database, BasicFileAttributes.class).fileKey();
        return key == null ? "" : key.toString();
    }

    /** On the disk when this returns. */
    void set() throws IOException {
        if (Files.exists(file) && !isOfAnotherRun()) {
            return;
        }
        write(disk.run() + "\n");
        OwnerOnly.sync(file.getParent());
    }

    private void write(String text) throws IOException {
        try (FileChannel out = disk.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            out.truncate(0);
            out.write(ByteBuffer.wrap(text.getBytes(UTF_8)), 0);
            out.force(true);
        }
    }

    void clear() throws IOException {
        disk.delete(file);
    }
}
