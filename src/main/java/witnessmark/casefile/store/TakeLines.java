package witnessmark.casefile.store;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.JdbcTemplate;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Entry;
import witnessmark.refusal.Refusal;

/** Takes lines over into a database, as they were numbered and chained where they come from. */
final class TakeLines {
    private final JdbcTemplate sql;
    private final String source;

    /** Lines of the source named, for messages. */
    TakeLines(JdbcTemplate sql, String source) {
        this.sql = sql;
        this.source = source;
    }

    /** Takes over lines that follow where the database ends; {@link StoreUnavailable} if they make no case. */
    void take(List<StoreLine> heap) {
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
            } catch (Refusal e) {
                throw new StoreUnavailable(
                        source,
                        "line " + more.get(0).number() + " of it cannot be taken over: case '" + caseId + "': "
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
