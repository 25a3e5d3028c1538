package witnessmark.casefile.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.jdbc.core.JdbcTemplate;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.Measurement;

/** The tables that are searched: words, findings and measurements of the present state. */
final class StateRows {
    private static final int SEARCHED = 2_500;

    private final JdbcTemplate sql;
    private final List<Object[]> words = new ArrayList<>();
    private final List<Object[]> findings = new ArrayList<>();
    private final List<Object[]> measurements = new ArrayList<>();

    StateRows(JdbcTemplate sql) {
        this.sql = sql;
    }

    /** Takes in the state of a case that has none yet; {@link #flush} writes what was taken in. */
    void insert(long caseNo, CaseFile now) {
        words.add(new Object[] {caseNo, searched(now)});
        now.findings().values().forEach(f -> take(caseNo, f));
        now.measurements().values().forEach(m -> take(caseNo, m));
    }

    private void take(long caseNo, FindingEntry finding) {
        findings.add(new Object[] {caseNo, finding.finding(), finding.state().word()});
    }

    private void take(long caseNo, Measurement m) {
        measurements.add(new Object[] {caseNo, m.measure(), m.value(), m.unit().symbol()});
    }

    void flush() {
        sql.batchUpdate("insert into case_text (case_no, words) values (?, ?)", words);
        sql.batchUpdate("insert into case_finding (case_no, finding, state) values (?, ?, ?)", findings);
        sql.batchUpdate(
                "insert into case_measurement (case_no, measure, reading, unit) values (?, ?, ?, ?)", measurements);
        words.clear();
        findings.clear();
        measurements.clear();
    }

    /** Writes only what differs: an interview sets one finding after another on a case that may hold hundreds. */
    void update(long caseNo, CaseFile now) {
        sql.update(
                "update case_text set words = ? where case_no = ? and words <> ?",
                searched(now),
                caseNo,
                searched(now));
        Map<String, String> keptFindings = keptFindings(caseNo);
        Map<String, String> keptReadings = keptReadings(caseNo);
        sql.batchUpdate(
                "delete from case_finding where case_no = ? and finding = ?",
                differing(caseNo, keptFindings, states(now)));
        sql.batchUpdate(
                "delete from case_measurement where case_no = ? and measure = ?",
                differing(caseNo, keptReadings, readings(now)));
        now.findings().values().stream()
                .filter(f -> !f.state().word().equals(keptFindings.get(f.finding())))
                .forEach(f -> take(caseNo, f));
        now.measurements().values().stream()
                .filter(m -> !reading(m).equals(keptReadings.get(m.measure())))
                .forEach(m -> take(caseNo, m));
        flush();
    }

    private static List<Object[]> differing(long caseNo, Map<String, String> kept, Map<String, String> now) {
        return kept.entrySet().stream()
                .filter(e -> !e.getValue().equals(now.get(e.getKey())))
                .map(e -> new Object[] {caseNo, e.getKey()})
                .toList();
    }

    boolean saysTheSame(long caseNo, CaseFile now) {
        List<String> kept = sql.queryForList("select words from case_text where case_no = ?", String.class, caseNo);
        return kept.equals(List.of(searched(now)))
                && keptFindings(caseNo).equals(states(now))
                && keptReadings(caseNo).equals(readings(now));
    }

    private Map<String, String> keptFindings(long caseNo) {
        Map<String, String> kept = new TreeMap<>();
        sql.query(
                "select finding, state from case_finding where case_no = ?",
                row -> {
                    kept.put(row.getString(1), row.getString(2));
                },
                caseNo);
        return kept;
    }

    private Map<String, String> keptReadings(long caseNo) {
        Map<String, String> kept = new TreeMap<>();
        sql.query(
                "select measure, reading, unit from case_measurement where case_no = ?",
                row -> {
                    kept.put(row.getString(1), row.getDouble(2) + " " + row.getString(3));
                },
                caseNo);
        return kept;
    }

    private static Map<String, String> states(CaseFile now) {
        Map<String, String> states = new TreeMap<>();
        now.findings().values().forEach(f -> states.put(f.finding(), f.state().word()));
        return states;
    }

    private static Map<String, String> readings(CaseFile now) {
        Map<String, String> readings = new TreeMap<>();
        now.measurements().values().forEach(m -> readings.put(m.measure(), reading(m)));
        return readings;
    }

    private static String reading(Measurement measurement) {
        return measurement.value() + " " + measurement.unit().symbol();
    }

    /** Id, title, truck and complaint in lower case, cut where a row would grow out of what a search can read fast. */
    private static String searched(CaseFile now) {
        String all =
                String.join("\n", now.id().text(), now.title(), now.vehicle().unit(), now.complaint());
        String lower = all.toLowerCase(Locale.ROOT);
        return lower.substring(0, Math.min(SEARCHED, lower.length()));
    }
}
