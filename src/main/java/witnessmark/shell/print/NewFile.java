package witnessmark.shell.print;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;

/** Writes a file whole or not at all, and over an older one only when told to. */
public final class NewFile {
    /** What to do with a file that is there already. */
    public enum Older {
        KEEP,
        REPLACE;

        /** As the option {@code --replace} says. */
        public static Older of(boolean replace) {
            return replace ? REPLACE : KEEP;
        }
    }

    private NewFile() {}

    /** A device or a pipe, such as /dev/null, is written into and stays what it is. */
    public static void write(Path target, byte[] bytes, Older older) {
        if (isDeviceOrPipe(target)) {
            writeInto(target, bytes);
            return;
        }
        if (Files.exists(target) && older == Older.KEEP) {
            throw new Refused("'" + target + "' is there already", "give another name after --out, or add --replace");
        }
        Path folder = target.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw new Refused("'" + folder + "' is no folder", "make it first, or give another path after --out");
        }
        try {
            Path part = Files.createTempFile(folder, ".writing-", ".part");
            try {
                Files.write(part, bytes);
                readableByOthers(part);
                move(part, target, older);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (FileAlreadyExistsException e) {
            throw new Refused("'" + target + "' was made meanwhile", "give another name, or add --replace");
        } catch (IOException e) {
            throw notWritten(target);
        }
    }

    private static boolean isDeviceOrPipe(Path target) {
        return Files.exists(target) && !Files.isRegularFile(target) && !Files.isDirectory(target);
    }

    private static void writeInto(Path target, byte[] bytes) {
        try {
            Files.write(target, bytes, StandardOpenOption.WRITE);
        } catch (IOException e) {
            throw notWritten(target);
        }
    }

    private static Refused notWritten(Path target) {
        return new Refused(
                "'" + target + "' cannot be written", "check that the folder may be written to and has room");
    }

    /** A temporary file is for its owner alone; a document is for others too, where the system knows such rights. */
    private static void readableByOthers(Path part) throws IOException {
        if (Files.getFileStore(part).supportsFileAttributeView(PosixFileAttributeView.class)) {
            Files.setPosixFilePermissions(part, PosixFilePermissions.fromString("rw-r--r--"));
        }
    }

    private static void move(Path part, Path target, Older older) throws IOException {
        if (older == Older.REPLACE) {
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } else {
            Files.move(part, target);
        }
    }
}
