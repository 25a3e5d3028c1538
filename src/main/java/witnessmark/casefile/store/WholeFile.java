package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** A file of the store's folder that is there as a whole or not at all, for its owner only. */
final class WholeFile {
    private WholeFile() {}

    /** Writes or replaces the file, in a folder that is made if it is missing; it is on the disk when this returns. */
    static void write(Path target, byte[] bytes) throws IOException {
        OwnerOnly.folder(target.getParent());
        Path part = Files.createTempFile(target.getParent(), "incoming-", ".part");
        try {
            writeSynced(part, bytes);
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
        OwnerOnly.sync(target.getParent());
    }

    private static void writeSynced(Path file, byte[] bytes) throws IOException {
        try (FileChannel out = FileChannel.open(file, StandardOpenOption.WRITE)) {
            ByteBuffer rest = ByteBuffer.wrap(bytes);
            while (rest.hasRemaining()) {
                out.write(rest);
            }
            out.force(true);
        }
    }
}
