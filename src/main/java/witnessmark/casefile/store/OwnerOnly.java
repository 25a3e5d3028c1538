package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/** Folders and files that nobody but their owner may read, where the system knows such rights. */
final class OwnerOnly {
    private static final Set<PosixFilePermission> FOLDER = PosixFilePermissions.fromString("rwx------");
    private static final Set<PosixFilePermission> FILE = PosixFilePermissions.fromString("rw-------");

    private OwnerOnly() {}

    /** Makes the folder and those above it as far as they are missing; one that is there stays as it is. */
    static void folder(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            Files.createDirectories(folder, attributes(folder.getFileSystem(), FOLDER));
        }
    }

    /** Opens a file; if it is made, for its owner only. */
    static FileChannel open(Path file, OpenOption... options) throws IOException {
        return FileChannel.open(file, Set.of(options), attributes(file.getFileSystem(), FILE));
    }

    /** Closes a file or folder to all but its owner, if it is there. */
    static void close(Path path) throws IOException {
        if (Files.exists(path) && isPosix(path.getFileSystem())) {
            Set<PosixFilePermission> rights = Files.isDirectory(path) ? FOLDER : FILE;
            if (!Files.getPosixFilePermissions(path).equals(rights)) {
                Files.setPosixFilePermissions(path, rights);
            }
        }
    }

    /** Puts a folder's list of names on the disk. */
    static void sync(Path folder) {
        try (FileChannel opened = FileChannel.open(folder, StandardOpenOption.READ)) {
            opened.force(true);
        } catch (IOException e) {
            // Some systems do not open folders; there the name is kept by the file system's own means.
        }
    }

    private static FileAttribute<?>[] attributes(FileSystem system, Set<PosixFilePermission> rights) {
        return isPosix(system)
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(rights)}
                : new FileAttribute<?>[0];
    }

    private static boolean isPosix(FileSystem system) {
        return system.supportedFileAttributeViews().contains("posix");
    }
}
