package witnessmark.casefile.store;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;

/**
 * Compares the entries of the database, in the order in which they were kept, with their numbers, with the chain over
 * them, and with the lines of the journal where there is one.
 */
final class CompareLines {
    private static final int HEAP = 1_000;
    private static final int MOST_SENTENCES = 20;

    private final JdbcTemplate sql;
    private final Deque<Kept> heap = new ArrayDeque<>();
    private final Map<String, List<Long>> gone = new LinkedHashMap<>();
    private final List<String> amiss = new ArrayList<>();
    private long lastRead;
    private long last;
    private String before = StoreHead.NONE.hash();

    CompareLines(JdbcTemplate sql) {
        this.sql = sql;
    }

    /** An entry of the database with its line. */
    private record Kept(long number, String hash, String caseId, long entry, String entryHash) {}

    /** A line of the journal, which the database should hold as well. */
    void journalled(StoreLine line) {
        Kept kept = next();
        while (kept != null && kept.number < line.number()) {
            checked(kept);
            kept = next();
        }
        if (kept == null || kept.number != line.number() || !kept.hash.equals(line.hash())) {
            gone.computeIfAbsent(line.caseId(), c -> new ArrayList<>())
                    .add(line.row().number());
            last = line.number();
            before = line.hash();
            if (kept != null && kept.number != line.number()) {
                heap.addFirst(kept);
            }
            return;
        }
        checked(kept);
    }

    /** What is amiss, after all lines of the journal: a sentence each. */
    List<String> found(StoreHead head) {
        for (Kept kept = next(); kept != null; kept = next()) {
            checked(kept);
        }
        if (last != head.lines() || !before.equals(head.hash())) {
            say("the store should end with entry " + head.lines() + " of all, it ends with " + last
                    + ": entries were taken out or changed");
        }
        gone.forEach((caseId, entries) -> say("case '" + caseId + "': "
                + (entries.size() == 1
                        ? "entry " + entries.get(0)
                        : entries.size() + " entries from " + entries.get(0) + " to " + entries.get(entries.size() - 1))
                + " of the journal is not in the database as it was kept"));
        return List.copyOf(amiss);
    }

    private void checked(Kept kept) {
        if (kept.number > last + 1) {
            say("entries " + (last + 1) + " to " + (kept.number - 1) + " of the store are missing: a case or entries"
                    + " were taken out");
        } else if (!kept.hash.equals(StoreLine.hash(kept.number, before, kept.caseId, kept.entry, kept.entryHash))) {
            say("entry " + kept.entry + " of case '" + kept.caseId + "' does not follow from what the store kept before"
                    + " it");
        }
        last = kept.number;
        before = kept.hash;
    }

    private void say(String sentence) {
        if (amiss.size() < MOST_SENTENCES) {
            amiss.add(sentence);
        }
    }

    private @Nullable Kept next() {
        if (heap.isEmpty()) {
            heap.addAll(sql.query(
                    "select e.line_number, e.line_hash, f.case_id, e.entry_number, e.hash from case_entry e"
                            + " join case_file f on f.case_no = e.case_no"
                            + " where e.line_number > ? order by e.line_number limit ?",
                    (row, n) -> new Kept(
                            row.getLong(1), row.getString(2), row.getString(3), row.getLong(4), row.getString(5)),
                    lastRead,
                    HEAP));
            if (heap.isEmpty()) {
                return null;
            }
            lastRead = heap.getLast().number;
        }
        return heap.pollFirst();
    }
}
