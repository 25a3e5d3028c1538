package witnessmark.casefile.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import witnessmark.casefile.history.CanonicalText;

/** Numbers the entries of one transaction among all of the store, in the order of keeping. */
final class StoreLines {
    private static final int HEAP = 1_000;

    private final JdbcTemplate sql;
    private final Map<String, StoreLine> numbered = new HashMap<>();
    private final List<StoreLine> taken = new ArrayList<>();
    private @Nullable StoreHead end;

    StoreLines(JdbcTemplate sql) {
        this.sql = sql;
    }

    /** Entries that have their numbers already, from the journal. */
    static StoreLines of(JdbcTemplate sql, List<StoreLine> known) {
        StoreLines lines = new StoreLines(sql);
        known.forEach(line -> lines.numbered.put(key(line.caseId(), line.row().number()), line));
        return lines;
    }

    private static String key(String caseId, long entry) {
        return caseId + " " + entry;
    }

    /** The lines taken in this transaction, in order. */
    List<StoreLine> taken() {
        return taken;
    }

    /** The line of an entry that is now kept. */
    StoreLine next(String caseId, CaseRows.Row row) {
        StoreLine given = numbered.get(key(caseId, row.number()));
        if (given != null) {
            taken.add(given);
            return given;
        }
        StoreHead before = end == null ? lockedHead() : end;
        StoreLine line = StoreLine.after(before.lines(), before.hash(), caseId, row);
        end = new StoreHead(line.number(), line.hash());
        taken.add(line);
        return line;
    }

    /** Writes where the lines end now. */
    void write() {
        StoreHead now = end;
        if (now != null) {
            write(now);
        }
    }

    void write(StoreHead now) {
        sql.update("update store_head set last_line = ?, last_hash = ?", now.lines(), now.hash());
    }

    /** Where the lines of the store end, or empty if its entries have no numbers yet. */
    Optional<StoreHead> head() {
        return head("");
    }

    /** Whether the entries are as many as the lines, the last one's among them: a torn change can leave others. */
    boolean endWith(StoreHead head) {
        return Boolean.TRUE.equals(sql.queryForObject(
                "select count(*) = ? and coalesce(max(line_number), 0) = ? from case_entry",
                Boolean.class,
                head.lines(),
                head.lines()));
    }

    /** Whether each case has an entry, as it has unless a change was torn before its journal knew of it. */
    boolean fillAllCases() {
        return sql.queryForList(
                        "select f.case_no from case_file f where not exists"
                                + " (select 1 from case_entry e where e.case_no = f.case_no) limit 1",
                        Long.class)
                .isEmpty();
    }

    /** Where the lines end, kept from being moved on by another shell until this transaction ends. */
    StoreHead lockedHead() {
        return head(" for update").orElse(StoreHead.NONE);
    }

    private Optional<StoreHead> head(String how) {
        return sql
                .query(
                        "select last_line, last_hash from store_head where only_row = 1" + how,
                        (row, n) -> new StoreHead(row.getLong(1), row.getString(2)))
                .stream()
                .findFirst();
    }

    /** Numbers the entries of a store from before there were numbers, case by case. */
    void numberAll() {
        StoreHead[] at = {StoreHead.NONE};
        List<Object[]> heap = new ArrayList<>();
        List<Object[]> entries = sql.query(
                "select e.case_no, f.case_id, e.entry_number, e.hash from case_entry e"
                        + " join case_file f on f.case_no = e.case_no order by e.case_no, e.entry_number",
                (row, n) -> new Object[] {row.getLong(1), row.getString(2), row.getLong(3), row.getString(4)});
        for (Object[] entry : entries) {
            long number = at[0].lines() + 1;
            String hash = StoreLine.hash(number, at[0].hash(), (String) entry[1], (long) entry[2], (String) entry[3]);
            at[0] = new StoreHead(number, hash);
            heap.add(new Object[] {number, hash, entry[0], entry[2]});
        }
        sql.batchUpdate(
                "update case_entry set line_number = ?, line_hash = ? where case_no = ? and entry_number = ?", heap);
        sql.update(
                "insert into store_head (only_row, last_line, last_hash, journal_begun) values (1, ?, ?, false)",
                at[0].lines(),
                at[0].hash());
    }

    boolean journalBegun() {
        return Boolean.TRUE.equals(sql.queryForObject("select journal_begun from store_head", Boolean.class));
    }

    void setJournalBegun() {
        sql.update("update store_head set journal_begun = true");
    }

    /** Gives all lines of the store in order, in heaps. */
    void all(Consumer<List<StoreLine>> taker) {
        StoreHead at = StoreHead.NONE;
        for (List<StoreLine> heap = after(at); !heap.isEmpty(); heap = after(at)) {
            taker.accept(heap);
            StoreLine last = heap.get(heap.size() - 1);
            at = new StoreHead(last.number(), last.hash());
        }
    }

    /** The next lines after this one, in order; none if it is the last. */
    List<StoreLine> after(StoreHead at) {
        List<StoreLine> heap = new ArrayList<>();
        String before = at.hash();
        for (Numbered row : rows(at.lines())) {
            heap.add(new StoreLine(row.number, before, row.caseId, row.row, row.hash));
            before = row.hash;
        }
        return heap;
    }

    /** Whether the store holds this line. */
    boolean holds(StoreHead at) {
        return at.equals(StoreHead.NONE)
                || !sql.queryForList(
                                "select line_number from case_entry where line_number = ? and line_hash = ?",
                                Long.class,
                                at.lines(),
                                at.hash())
                        .isEmpty();
    }

    /**
     * The first entry of the case whose line is not chained as its hash says; 0 if all are. What lies before an entry that is
     * gone is not looked at: {@link #isWithoutGap} tells.
     */
    long firstUnchained(long caseNo, String caseId) {
        return sql
                .query(
                        "select e.entry_number, e.hash, e.line_number, e.line_hash, before.line_hash from case_entry e"
                                + " left join case_entry before on before.line_number = e.line_number - 1"
                                + " where e.case_no = ? and e.line_number is not null order by e.entry_number",
                        (row, n) -> isChained(row, caseId) ? 0L : row.getLong(1),
                        caseNo)
                .stream()
                .filter(entry -> entry > 0)
                .findFirst()
                .orElse(0L);
    }

    private static boolean isChained(ResultSet row, String caseId) throws SQLException {
        long number = row.getLong(3);
        String before = number == 1 ? CanonicalText.NO_HASH : row.getString(5);
        return before == null
                || StoreLine.hash(number, before, caseId, row.getLong(1), row.getString(2))
                        .equals(row.getString(4));
    }

    /** Whether there are as many entries as lines were numbered; quick only where the database knows how many rows it has. */
    boolean isWithoutGap() {
        long last = head().orElse(StoreHead.NONE).lines();
        return Objects.equals(sql.queryForObject("select count(*) from case_entry", Long.class), last);
    }

    private record Numbered(long number, String hash, String caseId, CaseRows.Row row) {}

    private List<Numbered> rows(long after) {
        return Objects.requireNonNull(sql.query(
                "select e.line_number, e.line_hash, f.case_id, e.entry_number, e.made_at, e.who, e.body,"
                        + " e.previous_hash, e.hash from case_entry e join case_file f on f.case_no = e.case_no"
                        + " where e.line_number > ? order by e.line_number limit ?",
                (row, n) -> new Numbered(row.getLong(1), row.getString(2), row.getString(3), CaseRows.row(row, 4)),
                after,
                HEAP));
    }
}
