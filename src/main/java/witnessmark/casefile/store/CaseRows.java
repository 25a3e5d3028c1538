package witnessmark.casefile.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.Entry;
import witnessmark.casefile.history.Stamp;
import witnessmark.casefile.yaml.ChangeReader;

/** The rows of one case: its head, its entries and its present state. */
final class CaseRows {
    private static final int LONGEST_BODY = 1_000_000;
    private static final int SEARCHED = 2_500;

    private final JdbcTemplate sql;

    CaseRows(JdbcTemplate sql) {
        this.sql = sql;
    }

    /** The last entry as the head of the case names it. */
    record Head(long lastNumber, String lastHash) {}

    /** An entry as it lies in the store, its change still text. */
    record Row(long number, Instant time, String who, String body, String previousHash, String hash) {

        /** The entry; throws CaseFileFaults or CaseRefused if the row states none. */
        Entry entry() {
            Change change = ChangeReader.read("entry " + number, body);
            return new Entry(number, new Stamp(time, who), change, previousHash, hash);
        }
    }

    Optional<Head> head(CaseId id) {
        return head("select last_number, last_hash from case_file where case_id = ?", id);
    }

    /** The head, kept from being changed by another shell until this transaction ends. */
    Optional<Head> lockedHead(CaseId id) {
        return head("select last_number, last_hash from case_file where case_id = ? for update", id);
    }

    private Optional<Head> head(String query, CaseId id) {
        return sql.query(query, (row, n) -> new Head(row.getLong(1), row.getString(2)), id.text()).stream()
                .findFirst();
    }

    List<Row> entries(CaseId id) {
        return sql.query(
                "select entry_number, made_at, who, body, previous_hash, hash from case_entry"
                        + " where case_id = ? order by entry_number",
                (row, n) -> row(row),
                id.text());
    }

    private static Row row(ResultSet row) throws SQLException {
        return new Row(
                row.getLong(1),
                instant(row, 2),
                row.getString(3),
                row.getString(4),
                row.getString(5),
                row.getString(6));
    }

    static Instant instant(ResultSet row, int column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    /** A case not in the store before, with all its entries. */
    void insert(CaseHistory history) {
        insertAll(List.of(history));
    }

    /** Cases not in the store before, with all their entries. */
    void insertAll(List<CaseHistory> histories) {
        List<Object[]> heads = new ArrayList<>();
        List<Object[]> texts = new ArrayList<>();
        for (CaseHistory history : histories) {
            CaseFile now = history.present();
            Instant opened = history.entries().get(0).stamp().time();
            heads.add(new Object[] {
                now.id().text(),
                now.title(),
                now.vehicle().unit(),
                atUtc(opened),
                changed(history),
                signedOff(now),
                history.last().number(),
                history.last().hash()
            });
            texts.add(new Object[] {now.id().text(), searched(now)});
        }
        sql.batchUpdate(
                "insert into case_file (case_id, title, unit, opened_at, changed_at, signed_off_at, last_number,"
                        + " last_hash) values (?, ?, ?, ?, ?, ?, ?, ?)",
                heads);
        sql.batchUpdate("insert into case_text (case_id, words) values (?, ?)", texts);
        insertEntries(histories, 0);
        insertState(histories.stream().map(CaseHistory::present).toList());
    }

    /** Adds the entries after the given number, and makes head and present state follow. */
    void extend(CaseHistory history, long after) {
        CaseFile now = history.present();
        sql.update(
                "update case_file set title = ?, unit = ?, changed_at = ?, signed_off_at = ?, last_number = ?,"
                        + " last_hash = ? where case_id = ?",
                now.title(),
                now.vehicle().unit(),
                changed(history),
                signedOff(now),
                history.last().number(),
                history.last().hash(),
                now.id().text());
        sql.update(
                "update case_text set words = ? where case_id = ?",
                searched(now),
                now.id().text());
        insertEntries(List.of(history), after);
        writeState(now);
    }

    private void insertEntries(List<CaseHistory> histories, long after) {
        List<Object[]> rows = new ArrayList<>();
        for (CaseHistory history : histories) {
            for (Entry entry :
                    history.entries().subList((int) after, history.entries().size())) {
                String body = CanonicalText.of(entry.change());
                if (body.length() > LONGEST_BODY) {
                    throw new CaseRefused(
                            "case '" + history.id() + "': one change of " + body.length() + " characters",
                            "keep it to " + LONGEST_BODY + ", the rest as an attachment");
                }
                rows.add(new Object[] {
                    history.id().text(),
                    entry.number(),
                    atUtc(entry.stamp().time()),
                    entry.stamp().who(),
                    entry.change().kind(),
                    body,
                    entry.previousHash(),
                    entry.hash()
                });
            }
        }
        sql.batchUpdate(
                "insert into case_entry (case_id, entry_number, made_at, who, kind, body, previous_hash, hash)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?)",
                rows);
    }

    /** Writes only what differs: an interview sets one finding after another, on a case that may hold hundreds. */
    private void writeState(CaseFile now) {
        String id = now.id().text();
        Map<String, String> findings = findings(now.id());
        Map<String, String> measurements = measurements(now.id());
        List<Object[]> goneFindings = changedKeys(findings, stateOf(now)).stream()
                .map(finding -> new Object[] {id, finding})
                .toList();
        List<Object[]> goneMeasurements = changedKeys(measurements, readingsOf(now)).stream()
                .map(measure -> new Object[] {id, measure})
                .toList();
        sql.batchUpdate("delete from case_finding where case_id = ? and finding = ?", goneFindings);
        sql.batchUpdate("delete from case_measurement where case_id = ? and measure = ?", goneMeasurements);
        insertFindings(now.findings().values().stream()
                .filter(f -> !f.state().word().equals(findings.get(f.finding())))
                .map(f -> findingRow(now, f))
                .toList());
        insertMeasurements(now.measurements().values().stream()
                .filter(m -> !reading(m).equals(measurements.get(m.measure())))
                .map(m -> measurementRow(now, m))
                .toList());
    }

    private static List<String> changedKeys(Map<String, String> kept, Map<String, String> now) {
        return kept.entrySet().stream()
                .filter(e -> !e.getValue().equals(now.get(e.getKey())))
                .map(Map.Entry::getKey)
                .toList();
    }

    private void insertState(List<CaseFile> cases) {
        insertFindings(cases.stream()
                .flatMap(now -> now.findings().values().stream().map(f -> findingRow(now, f)))
                .toList());
        insertMeasurements(cases.stream()
                .flatMap(now -> now.measurements().values().stream().map(m -> measurementRow(now, m)))
                .toList());
    }

    private static Object[] findingRow(CaseFile now, FindingEntry finding) {
        return new Object[] {now.id().text(), finding.finding(), finding.state().word()};
    }

    private static Object[] measurementRow(CaseFile now, Measurement measurement) {
        return new Object[] {
            now.id().text(),
            measurement.measure(),
            measurement.value(),
            measurement.unit().symbol()
        };
    }

    private void insertFindings(List<Object[]> rows) {
        sql.batchUpdate("insert into case_finding (case_id, finding, state) values (?, ?, ?)", rows);
    }

    private void insertMeasurements(List<Object[]> rows) {
        sql.batchUpdate("insert into case_measurement (case_id, measure, reading, unit) values (?, ?, ?, ?)", rows);
    }

    /** Whether the tables that are searched say what the entries lead to. */
    boolean saysTheSame(CaseFile now) {
        List<String> shown = sql.query(
                "select f.title, f.unit, t.words, f.signed_off_at is null from case_file f"
                        + " join case_text t on t.case_id = f.case_id where f.case_id = ?",
                (row, n) ->
                        String.join("\u0000", row.getString(1), row.getString(2), row.getString(3)) + row.getBoolean(4),
                now.id().text());
        String expected = String.join("\u0000", now.title(), now.vehicle().unit(), searched(now)) + !now.isSignedOff();
        return shown.equals(List.of(expected))
                && findings(now.id()).equals(stateOf(now))
                && measurements(now.id()).equals(readingsOf(now));
    }

    private Map<String, String> findings(CaseId id) {
        Map<String, String> found = new TreeMap<>();
        sql.query(
                "select finding, state from case_finding where case_id = ?",
                row -> {
                    found.put(row.getString(1), row.getString(2));
                },
                id.text());
        return found;
    }

    private Map<String, String> measurements(CaseId id) {
        Map<String, String> found = new TreeMap<>();
        sql.query(
                "select measure, reading, unit from case_measurement where case_id = ?",
                row -> {
                    found.put(row.getString(1), row.getDouble(2) + " " + row.getString(3));
                },
                id.text());
        return found;
    }

    private static Map<String, String> stateOf(CaseFile now) {
        Map<String, String> state = new TreeMap<>();
        now.findings().values().forEach(f -> state.put(f.finding(), f.state().word()));
        return state;
    }

    private static Map<String, String> readingsOf(CaseFile now) {
        Map<String, String> readings = new TreeMap<>();
        now.measurements().values().forEach(m -> readings.put(m.measure(), reading(m)));
        return readings;
    }

    private static String reading(Measurement measurement) {
        return measurement.value() + " " + measurement.unit().symbol();
    }

    private static OffsetDateTime changed(CaseHistory history) {
        return atUtc(history.last().stamp().time());
    }

    private static @Nullable OffsetDateTime signedOff(CaseFile now) {
        return now.signedOff().map(s -> atUtc(s.time())).orElse(null);
    }

    private static OffsetDateTime atUtc(Instant time) {
        return time.atOffset(ZoneOffset.UTC);
    }

    private static String searched(CaseFile now) {
        String all =
                String.join("\n", now.id().text(), now.title(), now.vehicle().unit(), now.complaint());
        String lower = all.toLowerCase(Locale.ROOT);
        return lower.substring(0, Math.min(SEARCHED, lower.length()));
    }
}
