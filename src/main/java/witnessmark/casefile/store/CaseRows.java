package witnessmark.casefile.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.Entry;
import witnessmark.casefile.history.Stamp;
import witnessmark.casefile.yaml.ChangeReader;

/** The rows of a case: its head and its entries; what is searched follows by {@link StateRows}. */
final class CaseRows {
    private static final int LONGEST_BODY = 1_000_000;
    private static final String HEAD = "select case_no, last_number, last_hash from case_file where case_id = ?";

    private final JdbcTemplate sql;
    private final StateRows state;
    private final StoreLines lines;

    CaseRows(JdbcTemplate sql) {
        this(sql, new StoreLines(sql));
    }

    /** Rows whose new entries are numbered among all of the store. */
    CaseRows(JdbcTemplate sql, StoreLines lines) {
        this.sql = sql;
        this.state = new StateRows(sql);
        this.lines = lines;
    }

    /** The number of the case in the store, and the last entry as the head of the case names it. */
    record Head(long caseNo, long lastNumber, String lastHash) {}

    /** An entry as it lies in the store, its change still text. */
    record Row(long number, Instant time, String who, String body, String previousHash, String hash) {

        /** The entry; throws FaultyInput or CaseRefused if the row states none. */
        Entry entry() {
            Change change = ChangeReader.read("entry " + number, body);
            return new Entry(number, new Stamp(time, who), change, previousHash, hash);
        }

        /** Whether the hash written is that of what is written. */
        boolean isTrue() {
            return hash.equals(CanonicalText.hash(number, time, who, body, previousHash));
        }
    }

    Optional<Head> head(CaseId id) {
        return head(HEAD, id);
    }

    /** The head, kept from being changed by another shell until this transaction ends. */
    Optional<Head> lockedHead(CaseId id) {
        return head(HEAD + " for update", id);
    }

    private Optional<Head> head(String query, CaseId id) {
        return sql
                .query(query, (row, n) -> new Head(row.getLong(1), row.getLong(2), row.getString(3)), id.text())
                .stream()
                .findFirst();
    }

    List<Row> entries(long caseNo) {
        return sql.query(
                "select entry_number, made_at, who, body, previous_hash, hash from case_entry"
                        + " where case_no = ? order by entry_number",
                (row, n) -> row(row, 1),
                caseNo);
    }

    /** An entry from six columns that follow each other. */
    static Row row(ResultSet row, int first) throws SQLException {
        return new Row(
                row.getLong(first),
                instant(row, first + 1),
                text(row, first + 2),
                text(row, first + 3),
                text(row, first + 4),
                text(row, first + 5));
    }

    static Optional<Instant> instantOrNone(ResultSet row, int column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    static Instant instant(ResultSet row, int column) throws SQLException {
        OffsetDateTime time = row.getObject(column, OffsetDateTime.class);
        if (time == null) {
            throw missing();
        }
        return time.toInstant();
    }

    private static String text(ResultSet row, int column) throws SQLException {
        String text = row.getString(column);
        if (text == null) {
            throw missing();
        }
        return text;
    }

    /** The tables allow no nothing there: what was read is not what was written. */
    private static SQLException missing() {
        return new SQLException("corrupt: a row of an entry has nothing where something must be", "XX001");
    }

    /** Cases not in the store before, with all their entries. */
    void insertAll(List<CaseHistory> histories) {
        sql.batchUpdate(
                "insert into case_file (case_id, title, unit, opened_at, changed_at, signed_off_at, last_number,"
                        + " last_hash) values (?, ?, ?, ?, ?, ?, ?, ?)",
                histories.stream().map(CaseRows::headRow).toList());
        List<Object[]> entries = new ArrayList<>();
        for (CaseHistory history : histories) {
            long caseNo = head(history.id()).orElseThrow().caseNo();
            state.insert(caseNo, history.present());
            entries.addAll(entryRows(caseNo, history, 0));
        }
        insertEntries(entries);
        state.flush();
    }

    private static Object[] headRow(CaseHistory history) {
        CaseFile now = history.present();
        return new Object[] {
            now.id().text(),
            now.title(),
            now.vehicle().unit(),
            atUtc(history.entries().get(0).stamp().time()),
            atUtc(history.last().stamp().time()),
            signedOff(now),
            history.last().number(),
            history.last().hash()
        };
    }

    /** Adds the entries that the head does not know yet, and makes head and present state follow. */
    void extend(Head head, CaseHistory history) {
        CaseFile now = history.present();
        sql.update(
                "update case_file set title = ?, unit = ?, changed_at = ?, signed_off_at = ?, last_number = ?,"
                        + " last_hash = ? where case_no = ?",
                now.title(),
                now.vehicle().unit(),
                atUtc(history.last().stamp().time()),
                signedOff(now),
                history.last().number(),
                history.last().hash(),
                head.caseNo());
        insertEntries(entryRows(head.caseNo(), history, head.lastNumber()));
        state.update(head.caseNo(), now);
    }

    private List<Object[]> entryRows(long caseNo, CaseHistory history, long after) {
        List<Object[]> rows = new ArrayList<>();
        for (Entry entry :
                history.entries().subList((int) after, history.entries().size())) {
            String body = CanonicalText.of(entry.change());
            if (body.length() > LONGEST_BODY) {
                throw new CaseRefused(
                        "case '" + history.id() + "': one change of " + body.length() + " characters",
                        "keep it to " + LONGEST_BODY + ", the rest as an attachment");
            }
            Row row = new Row(
                    entry.number(),
                    entry.stamp().time(),
                    entry.stamp().who(),
                    body,
                    entry.previousHash(),
                    entry.hash());
            StoreLine line = lines.next(history.id().text(), row);
            rows.add(new Object[] {
                caseNo,
                row.number(),
                atUtc(row.time()),
                row.who(),
                entry.change().kind(),
                body,
                row.previousHash(),
                row.hash(),
                line.number(),
                line.hash()
            });
        }
        return rows;
    }

    private void insertEntries(List<Object[]> rows) {
        sql.batchUpdate(
                "insert into case_entry (case_no, entry_number, made_at, who, kind, body, previous_hash, hash,"
                        + " line_number, line_hash) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                rows);
        lines.write();
    }

    /** Whether the tables that are searched and listed say what the entries lead to. */
    boolean saysTheSame(long caseNo, CaseHistory history) {
        CaseFile now = history.present();
        List<Object> expected = Arrays.asList(
                now.title(),
                now.vehicle().unit(),
                history.entries().get(0).stamp().time(),
                history.last().stamp().time(),
                now.signedOff().map(SignOff::time));
        List<Object> listed = sql.queryForObject(
                "select title, unit, opened_at, changed_at, signed_off_at from case_file where case_no = ?",
                (row, n) -> Arrays.<Object>asList(
                        row.getString(1), row.getString(2), instant(row, 3), instant(row, 4), instantOrNone(row, 5)),
                caseNo);
        return expected.equals(listed) && state.saysTheSame(caseNo, now);
    }

    private static @Nullable OffsetDateTime signedOff(CaseFile now) {
        return now.signedOff().map(s -> atUtc(s.time())).orElse(null);
    }

    private static OffsetDateTime atUtc(Instant time) {
        return time.atOffset(ZoneOffset.UTC);
    }
}
