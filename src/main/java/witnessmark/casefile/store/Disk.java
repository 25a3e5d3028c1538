package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** The way from a store to its files; the tests put a recorder into it, to see what a power cut would leave. */
class Disk {
    /** What stands before the path of a database file in its address. */
    String scheme() {
        return "file:";
    }

    boolean isWritable(Path path) {
        return Files.isWritable(path);
    }

    /** Opens a file; if it is made, for its owner only. */
    FileChannel open(Path file, OpenOption... options) throws IOException {
        return OwnerOnly.open(file, options);
    }

    /** Gives a file or folder another name in the same folder, on the disk when this returns. */
    void move(Path from, Path to) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        OwnerOnly.sync(to.getParent());
    }

    /** Takes a file away, if it is there. */
    void delete(Path file) throws IOException {
        Files.deleteIfExists(file);
    }

    /** What tells one run of this machine from the next, or empty where that cannot be known. */
    String run() {
        try {
            return Files.readString(Path.of("/proc/sys/kernel/random/boot_id")).strip();
        } catch (IOException e) {
            return "";
        }
    }
}
