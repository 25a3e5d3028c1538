package witnessmark.triplog.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Counts broken lines by kind and keeps the first line numbers of each kind; bounded however bad the file is. */
public final class BrokenLines {
    private static final int KEPT = 5;

    /** How often one kind was met and on which lines first. */
    public record Tally(BrokenKind kind, long count, List<Long> firstLines) {
        public String sentence() {
            String lines = firstLines.toString().replaceAll("[\\[\\]]", "");
            return count + " x " + kind.words() + " (line" + (count == 1 ? " " : "s ") + lines
                    + (count > firstLines.size() ? ", ..." : "") + ")";
        }
    }

    private final Map<BrokenKind, long[]> first = new EnumMap<>(BrokenKind.class);
    private final long[] counts = new long[BrokenKind.values().length];

    void add(BrokenKind kind, long line) {
        long before = counts[kind.ordinal()]++;
        if (before < KEPT) {
            first.computeIfAbsent(kind, k -> new long[KEPT])[(int) before] = line;
        }
    }

    public long count(BrokenKind kind) {
        return counts[kind.ordinal()];
    }

    public long total() {
        return Arrays.stream(counts).sum();
    }

    /** One tally for each kind that was met, in the order of the kinds. */
    public List<Tally> tallies() {
        List<Tally> tallies = new ArrayList<>();
        first.forEach((kind, lines) -> tallies.add(new Tally(
                kind,
                count(kind),
                Arrays.stream(lines).limit(count(kind)).boxed().toList())));
        return tallies;
    }
}
