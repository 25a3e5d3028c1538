package witnessmark.triplog;

/** What the names of files in a folder of logs say. */
public final class LogNames {
    private LogNames() {}

    /** Whether a file of this name is taken for a log. */
    public static boolean isLog(String fileName) {
        return fileName.matches("(?is)(?!read ?me|liesmich|notes?\\b)[^.].*\\.(csv|log|txt|candump|asc)(\\.gz)?");
    }

    /** The truck that a log in no sub-folder belongs to: its name up to the first underscore or dot. */
    public static String truck(String fileName) {
        return fileName.replaceFirst("(?s)[_.].*", "");
    }
}
