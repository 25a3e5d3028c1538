package witnessmark.truck;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import witnessmark.gearbox.TruckProfile;

/**
 * The profiles that a shop keeps: one YAML file each, named by the truck, as it was written. Each is checked when it is
 * kept and again whenever it is read.
 */
public final class TruckFolder {
    private static final String ENDING = ".yaml";
    static final int MOST_BYTES = 400_000;

    private final Path folder;

    public TruckFolder(Path folder) {
        this.folder = folder.toAbsolutePath().normalize();
    }

    /** The names of the trucks kept, sorted; empty where none was kept yet. */
    public List<String> names() {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(ENDING))
                    .map(name -> name.substring(0, name.length() - ENDING.length()))
                    .filter(TruckFolder::isName)
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new TruckRefused("'" + folder + "' cannot be listed", "check that it may be read");
        }
    }

    public boolean holds(String name) {
        return isName(name) && Files.isRegularFile(file(name), LinkOption.NOFOLLOW_LINKS);
    }

    /** The profile kept under this name; throws where there is none, or where it was damaged. */
    public TruckProfile read(String name) {
        TruckProfile truck = TruckYaml.read(file(name).toString(), yaml(name));
        if (!truck.id().equals(name)) {
            throw new TruckRefused(
                    "'" + file(name) + "' says it is truck '" + truck.id() + "'",
                    "rename the file or put the name right in it");
        }
        return truck;
    }

    /** The text kept under this name, as it was written. */
    public String yaml(String name) {
        if (!holds(name)) {
            throw new TruckRefused("no truck '" + name + "' is kept", "see: truck list");
        }
        return text(file(name));
    }

    /** The text of a profile anywhere on disk, bounded in size. */
    public static String text(Path file) {
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new TruckRefused(
                        "'" + file + "' has more than " + MOST_BYTES + " bytes", "it is no truck profile");
            }
            return Files.readString(file);
        } catch (CharacterCodingException e) {
            throw new TruckRefused("'" + file + "' is not UTF-8 text", "save it as UTF-8");
        } catch (IOException e) {
            throw new TruckRefused("'" + file + "' cannot be read", "check that it may be read");
        }
    }

    /**
     * Keeps a profile, on the disk when this returns, whole or not at all.
     *
     * @param replace whether one of the same name may be overwritten; else it is refused
     */
    public void keep(TruckProfile truck, String yaml, boolean replace) {
        try {
            Files.createDirectories(folder);
            try (FileChannel channel =
                    FileChannel.open(folder.resolve(".lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
                // Held until the channel closes: two shells do not both find the name free.
                channel.lock();
                if (!replace && holds(truck.id())) {
                    throw new TruckRefused(
                            "truck '" + truck.id() + "' is kept already",
                            "add --replace to put this one in" + " its place, or give it another name after 'truck:'");
                }
                write(file(truck.id()), yaml.getBytes(StandardCharsets.UTF_8));
            }
        } catch (IOException e) {
            throw new TruckRefused(
                    "'" + file(truck.id()) + "' cannot be written",
                    "check that the folder may be written" + " to and has room");
        }
    }

    public void remove(String name) {
        yaml(name);
        try {
            Files.delete(file(name));
        } catch (IOException e) {
            throw new TruckRefused("'" + file(name) + "' cannot be removed", "check that the folder may be written to");
        }
    }

    private void write(Path target, byte[] bytes) throws IOException {
        Path part = Files.createTempFile(folder, "incoming-", ".part");
        try {
            try (FileChannel out = FileChannel.open(part, StandardOpenOption.WRITE)) {
                ByteBuffer rest = ByteBuffer.wrap(bytes);
                while (rest.hasRemaining()) {
                    out.write(rest);
                }
                out.force(true);
            }
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
        try (FileChannel opened = FileChannel.open(folder, StandardOpenOption.READ)) {
            opened.force(true);
        } catch (IOException e) {
            // Some systems do not open folders; there the name is kept by the file system's own means.
        }
    }

    /** Names have no dots and no slashes, so that a file is always right inside the folder. */
    public static boolean isName(String name) {
        return name.length() <= 60 && name.matches("[a-z0-9]+(-[a-z0-9]+)*");
    }

    private Path file(String name) {
        return folder.resolve(name + ENDING);
    }
}
