package witnessmark.triplog;

import java.nio.file.Files;
import java.nio.file.Path;

/** What the names of files in a folder of logs say. */
public final class LogNames {
    private LogNames() {}

    /** Whether a file of this name is taken for a log. */
    public static boolean isLog(String fileName) {
        return fileName.matches("(?i)(?!read ?me|liesmich|notes?\\b)[^.].*\\.(csv|log|txt|candump|asc)(\\.gz)?");
    }

    /** Whether it is a file, or a link to one that is gone: that cannot be read, and is to be told of like any such log. */
    public static boolean isFile(Path place) {
        return Files.isRegularFile(place) || Files.isSymbolicLink(place) && !Files.exists(place);
    }

    /** The truck that a log in no sub-folder belongs to: its name up to the first underscore or dot. */
    public static String truck(String fileName) {
        return fileName.replaceFirst("[_.].*", "");
    }
}
