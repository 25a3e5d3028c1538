package witnessmark.shell.print;

import java.nio.file.Path;

/**
 * A file or folder that was named, or not.
 *
 * @param typed as it was typed; empty where none was named; what cannot be a path throws
 *     {@link java.nio.file.InvalidPathException}
 */
public record GivenPath(String typed) {
    public static final GivenPath NONE = new GivenPath("");

    public GivenPath {
        Path.of(typed);
    }

    public boolean isEmpty() {
        return typed.isEmpty();
    }

    /** The path; of the current folder where none was named. */
    public Path path() {
        return Path.of(typed);
    }

    @Override
    public String toString() {
        return typed;
    }
}
