package witnessmark.fleet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.triplog.LogFolder;
import witnessmark.triplog.read.LogBytes;
import witnessmark.truck.TruckFolder;
import witnessmark.truck.TruckRefused;

/**
 * The folder of a fleet on this machine: what lies in it is the same list for the program of one machine and for a cluster
 * whose workers see the folder too.
 *
 * @param logs by path
 * @param mappings paths of the mapping files that count
 * @param unlisted the trucks' folders that cannot be looked into
 */
public record FleetFolder(List<FleetFile> logs, List<String> mappings, List<UncountedLog> unlisted) {

    /** @throws IOException if the folder itself cannot be listed */
    public static FleetFolder of(Path folder) throws IOException {
        LogFolder listed = LogFolder.of(folder);
        List<FleetFile> logs = new ArrayList<>();
        List<String> mappings = new ArrayList<>();
        for (LogFolder.File file : listed.files()) {
            if (FleetFile.isLog(file.path())) {
                logs.add(file(file));
            } else if (FleetFile.isMapping(file.path())) {
                mappings.add(file.path());
            }
        }
        logs.sort((one, other) -> FleetFile.compareNames(one.path(), other.path()));
        return new FleetFolder(
                logs,
                mappings,
                listed.unlisted().stream()
                        .map(u -> UncountedLog.folder(u.name(), u.why()))
                        .toList());
    }

    private static FleetFile file(LogFolder.File file) {
        try {
            return new FleetFile(
                    file.path(),
                    Files.size(file.place()),
                    Files.getLastModifiedTime(file.place()).toMillis());
        } catch (IOException e) {
            // What can be read of it, or why it cannot, shows when it is read.
            return new FleetFile(file.path(), 0, 0);
        }
    }

    /** The profiles of the trucks that have their own, by the trucks' names. */
    public Map<String, WrittenText> profiles(TruckFolder own) {
        return logs.stream()
                .map(FleetFile::truck)
                .distinct()
                .filter(own::holds)
                .collect(Collectors.toMap(truck -> truck, truck -> profile(own, truck)));
    }

    private static WrittenText profile(TruckFolder own, String truck) {
        try {
            return WrittenText.of(own.yaml(truck));
        } catch (TruckRefused e) {
            return WrittenText.unreadable(e.getMessage());
        }
    }

    /** The mappings that lie beside the logs, by folder. */
    public Map<String, WrittenText> mappingsIn(Path folder) {
        return mappings.stream()
                .map(path -> new FleetFile(path, 0, 0))
                .collect(Collectors.toMap(FleetFile::folder, file -> WrittenText.of(bytes(folder, file))));
    }

    /** What a log in the folder holds; its place is looked up when it is opened, which may be on another computer. */
    public static LogBytes bytes(Path folder, FleetFile log) {
        return new LogBytes() {
            @Override
            public InputStream open() throws IOException {
                return file().open();
            }

            @Override
            public long size() throws IOException {
                return file().size();
            }

            private LogBytes file() throws IOException {
                try {
                    return LogBytes.of(folder.resolve(log.path()));
                } catch (InvalidPathException e) {
                    throw new FileSystemException(log.path(), null, FleetFile.UNKNOWN_LETTERS);
                }
            }
        };
    }

    /** Whether a place, there already or not, is the folder or lies in it by whatever links: its tables would be read as logs. */
    public static boolean holds(Path folder, Path place) {
        return real(place).startsWith(real(folder));
    }

    /** Without links, as far as it is there. */
    private static Path real(Path place) {
        Path whole = place.toAbsolutePath().normalize();
        try {
            return whole.toRealPath();
        } catch (IOException e) {
            Path parent = whole.getParent();
            return parent == null ? whole : real(parent).resolve(whole.getFileName());
        }
    }
}
