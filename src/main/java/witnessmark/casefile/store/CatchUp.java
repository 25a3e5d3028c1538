package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.JdbcTemplate;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Entry;
import witnessmark.yaml.FaultyInput;

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
        StoreLines lines = StoreLines.of(sql, heap);
        CaseRows rows = new CaseRows(sql, lines);
        Map<String, List<StoreLine>> byCase = new LinkedHashMap<>();
        heap.forEach(line ->
                byCase.computeIfAbsent(line.caseId(), c -> new ArrayList<>()).add(line));
        List<CaseHistory> opened = new ArrayList<>();
        byCase.forEach((caseId, more) -> {
            try {
                Optional<CaseRows.Head> head = rows.head(new CaseId(caseId));
                List<Entry> entries = new ArrayList<>();
                head.ifPresent(h -> rows.entries(h.caseNo()).forEach(row -> entries.add(row.entry())));
                more.forEach(line -> entries.add(line.row().entry()));
                CaseHistory history = CaseHistory.of(entries);
                head.ifPresentOrElse(h -> rows.extend(h, history), () -> opened.add(history));
            } catch (FaultyInput | CaseRefused e) {
                throw new StoreUnavailable(
                        store.toString(),
                        "line " + more.get(0).number() + " of its journal cannot be taken over: case '" + caseId + "': "
                                + String.valueOf(e.getMessage())
                                        .lines()
                                        .findFirst()
                                        .orElse(""),
                        "bring back the store from a copy",
                        e);
            }
        });
        rows.insertAll(opened);
        StoreLine last = heap.get(heap.size() - 1);
        lines.write(new StoreHead(last.number(), last.hash()));
    }
}
