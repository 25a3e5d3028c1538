package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.springframework.jdbc.core.JdbcTemplate;

/**
 * Brings a database to where its journal ends: a shell that was ended in the middle, or a power cut, can leave a change in
 * the journal that the database does not know. The caller holds the turn, and commits.
 */
final class CatchUp {
    private static final int HEAP = 5_000;
    private static final String MEND = "bring back the journal from a copy of the store, or begin a new one from the"
            + " database as it is with: store journal";

    private final Path store;
    private final JdbcTemplate sql;
    private final Journal journal;

    CatchUp(Path store, JdbcTemplate sql, Journal journal) {
        this.store = store;
        this.sql = sql;
        this.journal = journal;
    }

    /** Makes both end with the same line; {@link StoreUnavailable} if they are not of one store. */
    void run() throws IOException {
        StoreLines lines = new StoreLines(sql);
        if (lines.head().isEmpty()) {
            lines.numberAll();
        }
        StoreHead head = lines.head().orElseThrow();
        if (!lines.journalBegun() && journal.isEmpty()) {
            journal.begin(lines::all, store.resolve("journal-before"));
            lines.setJournalBegun();
            return;
        }
        if (!journal.isThere() && head.lines() > 0) {
            throw new StoreUnavailable(store.toString(), "its journal is gone, " + head.lines() + " lines", MEND);
        }
        if (!journal.endsWith(head)) {
            follow(head);
        }
        if (!lines.journalBegun()) {
            lines.setJournalBegun();
        }
    }

    private void follow(StoreHead head) throws IOException {
        Journal.Followed followed = replay(head);
        if (!followed.fits()) {
            throw new StoreUnavailable(
                    store.toString(),
                    "journal and database do not fit: the database ends with line " + head.lines()
                            + ", which the journal does not hold or does not go on from",
                    MEND);
        }
        journal.cutOff(followed);
    }

    /** Takes over all whole changes after the line, in heaps. */
    Journal.Followed replay(StoreHead from) throws IOException {
        List<StoreLine> heap = new ArrayList<>();
        Journal.Followed followed = journal.follow(from, change -> {
            heap.addAll(change);
            if (heap.size() >= HEAP) {
                take(heap);
                heap.clear();
            }
        });
        if (!heap.isEmpty()) {
            take(heap);
        }
        return followed;
    }

    private void take(List<StoreLine> heap) {
        new TakeLines(sql, store + ", its journal").take(heap);
    }
}
