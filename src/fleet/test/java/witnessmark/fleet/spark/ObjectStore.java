package witnessmark.fleet.spark;

import java.io.IOException;
import java.net.URI;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FSDataInputStream;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FilterFileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.fs.RawLocalFileSystem;

/** Stands for an object store: files of this machine under a scheme of its own, so that only Hadoop can open them. */
public final class ObjectStore extends FilterFileSystem {
    private URI name = URI.create("objects://bucket");

    public ObjectStore() {
        super(new RawLocalFileSystem());
    }

    @Override
    public void initialize(URI given, Configuration settings) throws IOException {
        fs.initialize(URI.create("file:///"), settings);
        setConf(settings);
        name = URI.create(given.getScheme() + "://" + given.getAuthority());
    }

    @Override
    public String getScheme() {
        return "objects";
    }

    @Override
    public URI getUri() {
        return name;
    }

    @Override
    protected void checkPath(Path path) {
        // Every path of this scheme is its own.
    }

    @Override
    public Path makeQualified(Path path) {
        return path.makeQualified(name, new Path("/"));
    }

    private static Path local(Path path) {
        return new Path("file", null, path.toUri().getPath());
    }

    private FileStatus here(FileStatus status) {
        status.setPath(new Path(
                name.getScheme(), name.getAuthority(), status.getPath().toUri().getPath()));
        return status;
    }

    @Override
    public FileStatus getFileStatus(Path path) throws IOException {
        return here(fs.getFileStatus(local(path)));
    }

    @Override
    public FileStatus[] listStatus(Path path) throws IOException {
        FileStatus[] all = fs.listStatus(local(path));
        for (FileStatus one : all) {
            here(one);
        }
        return all;
    }

    @Override
    public FSDataInputStream open(Path path, int buffer) throws IOException {
        return fs.open(local(path), buffer);
    }
}
