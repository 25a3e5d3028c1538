package witnessmark.fleet.spark;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.spark.util.SerializableConfiguration;
import witnessmark.fleet.FleetFile;
import witnessmark.triplog.read.LogBytes;

/** A folder of any file system that Hadoop knows: of this machine, of the cluster, or of an object store. */
record Place(String uri, SerializableConfiguration settings) implements Serializable {
    private static final long MOST_TEXT_BYTES = 400_000;

    /** The logs in it, and the mapping files that count, each by its path from here on. */
    record Listed(List<FleetFile> logs, List<String> mappings) {}

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

    Path path(String inside) {
        return new Path(path(), inside);
    }

    FileSystem files() throws IOException {
        return path().getFileSystem(settings.value());
    }

    boolean isFolder() throws IOException {
        return files().exists(path()) && files().getFileStatus(path()).isDirectory();
    }

    /** Whether it is the other place, or lies in it. */
    boolean isIn(Place other) {
        return (uri + "/").startsWith(other.uri.replaceFirst("/+$", "") + "/");
    }

    /** Looks into it and its sub-folders, by the same rule as on one machine. */
    Listed listed() throws IOException {
        if (!isFolder()) {
            throw new Refused("'" + uri + "' is no folder; give that of the fleet's logs after --logs");
        }
        Listed listed = new Listed(new ArrayList<>(), new ArrayList<>());
        for (FileStatus here : files().listStatus(path())) {
            if (here.isDirectory()) {
                for (FileStatus inside : files().listStatus(here.getPath())) {
                    note(here.getPath().getName() + "/" + inside.getPath().getName(), inside, listed);
                }
            } else {
                note(here.getPath().getName(), here, listed);
            }
        }
        return listed;
    }

    private static void note(String path, FileStatus status, Listed listed) {
        if (status.isFile() && FleetFile.isLog(path)) {
            listed.logs.add(new FleetFile(path, status.getLen(), status.getModificationTime()));
        } else if (status.isFile() && FleetFile.isMapping(path)) {
            listed.mappings.add(path);
        }
    }

    /** The profiles in it, by the trucks' names. */
    Map<String, String> profiles() throws IOException {
        if (!isFolder()) {
            throw new Refused("--profiles '" + uri + "' is no folder");
        }
        Map<String, String> profiles = new HashMap<>();
        for (FileStatus file : files().listStatus(path())) {
            String name = file.getPath().getName();
            if (file.isFile() && name.matches("[a-z0-9]+(-[a-z0-9]+)*\\.yaml")) {
                profiles.put(name.replaceFirst("\\.yaml$", ""), text(name));
            }
        }
        return profiles;
    }

    /** The text of a small file in it. */
    String text(String inside) throws IOException {
        try (InputStream in = files().open(path(inside))) {
            byte[] bytes = in.readNBytes((int) MOST_TEXT_BYTES + 1);
            if (bytes.length > MOST_TEXT_BYTES) {
                throw new Refused("'" + path(inside) + "' has more than " + MOST_TEXT_BYTES + " bytes; it is no profile"
                        + " and no mapping");
            }
            return new String(bytes, StandardCharsets.UTF_8);
        }
    }

    /** What a log holds, as a stream; a file of this machine is read without the detour. */
    LogBytes bytes(FleetFile log) {
        Path place = path(log.path());
        String scheme = place.toUri().getScheme();
        if (scheme == null || scheme.equals("file")) {
            return LogBytes.of(java.nio.file.Path.of(place.toUri().getPath()));
        }
        return new LogBytes() {
            @Override
            public InputStream open() throws IOException {
                return files().open(place);
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
