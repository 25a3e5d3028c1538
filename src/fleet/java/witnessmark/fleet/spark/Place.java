package witnessmark.fleet.spark;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.Serializable;
import java.net.URI;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.spark.util.SerializableConfiguration;
import witnessmark.fleet.FleetFile;
import witnessmark.fleet.FleetFolder;
import witnessmark.fleet.UncountedLog;
import witnessmark.fleet.WrittenText;
import witnessmark.triplog.LogFolder;
import witnessmark.triplog.read.LogBytes;
import witnessmark.triplog.read.WhyUnreadable;
import witnessmark.truck.TruckFolder;

/** A folder of any file system that Hadoop knows: of this machine, of the cluster, or of an object store. */
record Place(String uri, SerializableConfiguration settings) implements Serializable {
    /**
     * A place as it was typed: made whole here, where the job was handed in, since a worker starts in a folder of its own.
     */
    static Place of(String typed, SerializableConfiguration settings) throws IOException {
        Path path = new Path(typed);
        return new Place(
                path.getFileSystem(settings.value()).makeQualified(path).toString(), settings);
    }

    Path path() {
        return new Path(uri);
    }

    /** A place inside; a colon in its name is none of a scheme. */
    Path path(String inside) {
        return new Path(path(), new Path(null, null, inside));
    }

    /** Where it is on this machine, and on each worker; empty for a place of a cluster or an object store. */
    private Optional<java.nio.file.Path> local() {
        URI place = path().toUri();
        return "file".equals(place.getScheme())
                ? Optional.of(java.nio.file.Path.of(place.getPath()))
                : Optional.empty();
    }

    FileSystem files() throws IOException {
        return path().getFileSystem(settings.value());
    }

    boolean isFolder() throws IOException {
        return files().exists(path()) && files().getFileStatus(path()).isDirectory();
    }

    /** Whether it is the other place, or lies in it, on this machine by whatever links. */
    boolean isIn(Place other) {
        return local().isPresent() && other.local().isPresent()
                ? FleetFolder.holds(other.local().get(), local().get())
                : (uri + "/").startsWith(other.uri.replaceFirst("/+$", "") + "/");
    }

    /** Looks into it and its sub-folders, by the same rule as on one machine. */
    FleetFolder listed() throws IOException {
        if (!isFolder()) {
            throw new Refused("'" + uri + "' is no folder; give that of the fleet's logs after --logs");
        }
        if (local().isPresent()) {
            return FleetFolder.of(local().get());
        }
        FleetFolder listed = new FleetFolder(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        for (FileStatus here : files().listStatus(path())) {
            String name = here.getPath().getName();
            if (!here.isDirectory()) {
                note(name, here, listed);
            } else if (!LogFolder.isHidden(name)) {
                noteInside(here, listed);
            }
        }
        return listed;
    }

    private void noteInside(FileStatus folder, FleetFolder listed) {
        String name = folder.getPath().getName();
        try {
            for (FileStatus inside : files().listStatus(folder.getPath())) {
                note(name + "/" + inside.getPath().getName(), inside, listed);
            }
        } catch (IOException e) {
            listed.unlisted().add(UncountedLog.folder(name, WhyUnreadable.of(e)));
        }
    }

    private static void note(String path, FileStatus status, FleetFolder listed) {
        if (status.isFile() && FleetFile.isLog(path)) {
            listed.logs().add(new FleetFile(path, status.getLen(), status.getModificationTime()));
        } else if (status.isFile() && FleetFile.isMapping(path)) {
            listed.mappings().add(path);
        }
    }

    /** The profiles in it of the trucks whose logs are there, by the trucks' names. */
    Map<String, WrittenText> profiles(FleetFolder of) throws IOException {
        if (!isFolder()) {
            throw new Refused("--profiles '" + uri + "' is no folder");
        }
        if (local().isPresent()) {
            return of.profiles(new TruckFolder(local().get()));
        }
        Map<String, WrittenText> profiles = new HashMap<>();
        Set<String> trucks = of.logs().stream().map(FleetFile::truck).collect(Collectors.toSet());
        for (FileStatus file : files().listStatus(path())) {
            String truck = file.getPath().getName().replaceFirst("\\.yaml$", "");
            if (file.isFile()
                    && file.getPath().getName().endsWith(".yaml")
                    && TruckFolder.isName(truck)
                    && trucks.contains(truck)) {
                profiles.put(truck, WrittenText.of(bytes(inside(file))));
            }
        }
        return profiles;
    }

    private static FleetFile inside(FileStatus file) {
        return new FleetFile(file.getPath().getName(), file.getLen(), file.getModificationTime());
    }

    /** The mappings beside the logs, by folder. */
    Map<String, WrittenText> mappings(FleetFolder of) {
        if (local().isPresent()) {
            return of.mappingsIn(local().get());
        }
        return of.mappings().stream()
                .map(path -> new FleetFile(path, 0, 0))
                .collect(Collectors.toMap(FleetFile::folder, file -> WrittenText.of(bytes(file))));
    }

    /** The text of a small file in it that was named when the job was handed in. */
    String text(String inside) {
        WrittenText text = WrittenText.of(bytes(new FleetFile(inside, 0, 0)));
        if (!text.fault().isEmpty()) {
            throw new Refused("'" + path(inside) + "' cannot be read (" + text.fault() + ")");
        }
        return text.text();
    }

    /** What a log holds, as a stream; a file of this machine is read without the detour. */
    LogBytes bytes(FleetFile log) {
        if (local().isPresent()) {
            return FleetFolder.bytes(local().get(), log);
        }
        return new LogBytes() {
            @Override
            public InputStream open() throws IOException {
                return files().open(path(log.path()));
            }

            @Override
            public long size() {
                return log.bytes();
            }
        };
    }

    OutputStream write(String inside) throws IOException {
        return files().create(path(inside), true);
    }

    /** Makes a mark that no other job may make too; false if it is there. */
    boolean mark(String inside) throws IOException {
        files().mkdirs(path());
        return files().createNewFile(path(inside));
    }

    void remove(String inside) throws IOException {
        files().delete(path(inside), true);
    }

    /** Puts one in the other's place. */
    void replace(String by, String inside) throws IOException {
        remove(inside);
        if (!files().rename(path(by), path(inside))) {
            throw new IOException("'" + path(by) + "' cannot be renamed to '" + path(inside) + "'");
        }
    }
}
