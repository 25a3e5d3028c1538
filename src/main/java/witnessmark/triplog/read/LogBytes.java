package witnessmark.triplog.read;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;

/** Where the bytes of a log come from: a file of this machine, or an object of a store. They are read as a stream. */
public interface LogBytes {
    /** The bytes from their beginning; may be asked for more than once. */
    InputStream open() throws IOException;

    /** How many there are. */
    long size() throws IOException;

    /** A file of this machine. What is no plain file is not opened, as a pipe would keep the reader waiting. */
    static LogBytes of(Path file) {
        return new LogBytes() {
            @Override
            public InputStream open() throws IOException {
                if (!Files.readAttributes(file, BasicFileAttributes.class).isRegularFile()) {
                    throw new FileSystemException(file.toString(), null, "it is no plain file");
                }
                return Files.newInputStream(file);
            }

            @Override
            public long size() throws IOException {
                return Files.size(file);
            }
        };
    }
}
