package witnessmark.triplog.summary;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * By what the rows of a log are known again in another file, whole or in part, with other times or none: of its short stretches of
 * driving the few whose hash is least, so that a part of the log keeps its share of them. One drive's stretches are the
 * same to the last digit wherever they stand; two drives share none.
 *
 * @param hashes sixteen hexadecimal digits each, in order; empty for a log that hardly drives, and for one stored with dates before its marks were taken too
 */
public record RowMarks(List<String> hashes) {
    public static final RowMarks NONE = new RowMarks(List.of());

    /** So many are no chance. */
    private static final int SHARED = 3;

    public RowMarks {
        for (String hash : hashes) {
            if (!hash.matches("[0-9a-f]{16}")) {
                throw new IllegalArgumentException("'" + hash + "' is not sixteen hexadecimal digits");
            }
        }
        hashes = List.copyOf(new TreeSet<>(hashes));
    }

    /** Whether both logs hold rows of one drive. */
    public boolean isSameDriving(RowMarks other) {
        Set<String> shared = new HashSet<>(hashes);
        shared.retainAll(other.hashes);
        return shared.size() >= SHARED;
    }

    public RowMarks plus(RowMarks other) {
        Set<String> both = new TreeSet<>(hashes);
        both.addAll(other.hashes);
        return new RowMarks(List.copyOf(both));
    }
}
