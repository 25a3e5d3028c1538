package witnessmark.fleet;

import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import witnessmark.triplog.LogNames;
import witnessmark.triplog.read.UnreadableLog;

/**
 * One log in the folder of a fleet. Each sub-folder is a truck; a log in no sub-folder belongs to the truck that its name
 * begins with, up to the first underscore.
 *
 * @param path from the folder on, parted by slashes
 * @param bytes its size as stored
 * @param modifiedMillis when it was last written, milliseconds since 1970
 */
public record FleetFile(String path, long bytes, long modifiedMillis) implements Serializable {
    /** A mapping file of this name in a folder holds for the CSV logs in it; one in the fleet's folder for all others. */
    public static final String MAPPING_FILE = "mapping.yaml";

    static final String UNKNOWN_LETTERS =
            "its name has letters that this computer's character set does not know; rename"
                    + " it, or start under a UTF-8 locale";

    private static final int DEEPEST = 2;
    /** What stands for the bytes of a name that are no letter. */
    private static final char LOST_LETTER = '\uFFFD';

    private static final String NAMELESS = "nameless";

    /** Whether a file so far down and of this name is a log of the fleet. */
    public static boolean isLog(String path) {
        return path.split("/").length <= DEEPEST && LogNames.isLog(name(path));
    }

    /** Whether it is a mapping file that counts. */
    public static boolean isMapping(String path) {
        return path.split("/").length <= DEEPEST && name(path).equals(MAPPING_FILE);
    }

    /** Names in the order of their UTF-8 bytes, which is the order in which tables are sorted elsewhere too. */
    static int compareNames(String one, String other) {
        return Arrays.compareUnsigned(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }

    public String truck() {
        int slash = path.indexOf('/');
        String truck = slash > 0 ? path.substring(0, slash) : LogNames.truck(path);
        return truck.isBlank() ? NAMELESS : truck;
    }

    /** Its folder inside that of the fleet; empty for the latter itself. */
    public String folder() {
        return path.contains("/") ? path.substring(0, path.lastIndexOf('/')) : "";
    }

    public String name() {
        return name(path);
    }

    /** Its name as a place; {@link UnreadableLog} where its letters are not known here, or were lost when it was listed. */
    Path place() {
        try {
            if (path.indexOf(LOST_LETTER) < 0) {
                return Path.of(name());
            }
        } catch (InvalidPathException e) {
            // said below, for both faults alike
        }
        throw new UnreadableLog(UNKNOWN_LETTERS);
    }

    private static String name(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }
}
