package witnessmark.casefile.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import org.springframework.jdbc.core.JdbcTemplate;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.FindingState;

/**
 * Finds cases by what their present state says.
 *
 * <p>Each search walks one table in the order of the list, and stops when the page is full: the index of findings
 * if a finding is asked for, else the words, else the cases themselves. All other conditions are looked up by number.
 */
final class CaseSearch {
    private static final Pattern OF_AN_ID = Pattern.compile("[a-z0-9-]*");

    /** What the index on three letters of a shared store finds anywhere; of less it knows only how words begin. */
    private static final Pattern LONG = Pattern.compile("[\\p{L}\\p{N}]{3}");

    private static final Pattern SIGNS = Pattern.compile("[^\\p{L}\\p{N}]*");
    /** What stands before a word, itself in a pattern. */
    private static final List<String> BEGINNINGS = List.of("", "% ", "%\n", "%-");

    private final JdbcTemplate sql;

    CaseSearch(JdbcTemplate sql) {
        this.sql = sql;
    }

    List<CaseSummary> list(CaseQuery query) {
        Walk walk = new Walk(query);
        String turn = query.oldestFirst() ? "asc" : "desc";
        query.after()
                .ifPresent(last -> walk.hold(
                        "w.case_no " + (query.oldestFirst() ? ">" : "<")
                                + " (select case_no from case_file where case_id = ?)",
                        last.text()));
        walk.values.add(query.limit());
        walk.values.add(query.offset());
        return sql.query(
                "select f.case_id, f.title, f.unit, f.opened_at, f.changed_at, f.signed_off_at, f.last_number"
                        + " from (select w.case_no" + walk.text + walk.order.replace("TURN", turn)
                        + " limit ? offset ?) page"
                        + " join case_file f on f.case_no = page.case_no order by f.case_no " + turn,
                (row, n) -> summary(row),
                walk.values.toArray());
    }

    long count(CaseQuery query) {
        Walk walk = new Walk(query);
        Long count = sql.queryForObject("select count(*)" + walk.text, Long.class, walk.values.toArray());
        return Objects.requireNonNull(count);
    }

    long countUpTo(long most, CaseQuery query) {
        Walk walk = new Walk(query);
        walk.values.add(most);
        Long count = sql.queryForObject(
                "select count(*) from (select w.case_no" + walk.text + " limit ?) counted",
                Long.class,
                walk.values.toArray());
        return Objects.requireNonNull(count);
    }

    /** Ids that begin so, in order. */
    List<CaseId> ids(String prefix, int limit) {
        if (!OF_AN_ID.matcher(prefix).matches()) {
            return List.of();
        }
        return sql.query(
                "select case_id from case_file where case_id like ? order by case_id limit ?",
                (row, n) -> new CaseId(row.getString(1)),
                prefix + "%",
                limit);
    }

    /** Ids after the given one, in order. */
    List<CaseId> idsAfter(String last, int limit) {
        return sql.query(
                "select case_id from case_file where case_id > ? order by case_id limit ?",
                (row, n) -> new CaseId(row.getString(1)),
                last,
                limit);
    }

    /** The table walked, as w, with its conditions and their values. */
    private static final class Walk {
        private final StringBuilder text = new StringBuilder();
        private final List<Object> values = new ArrayList<>();
        private final String order;
        private String and = " where ";

        Walk(CaseQuery query) {
            List<Map.Entry<String, FindingState>> findings =
                    new ArrayList<>(query.findings().entrySet());
            List<String> words = query.text().isBlank()
                    ? List.of()
                    : List.of(query.text().strip().toLowerCase(Locale.ROOT).split("\\s+"));
            if (!findings.isEmpty()) {
                text.append(" from case_finding w");
                hold("w.finding = ?", findings.get(0).getKey());
                hold("w.state = ?", findings.get(0).getValue().word());
                findings.subList(1, findings.size()).forEach(this::hold);
                words.forEach(word -> {
                    hold(existing("case_text", anyOf("o.words", patterns(word))));
                    values.addAll(patterns(word));
                });
            } else if (!words.isEmpty()) {
                text.append(" from case_text w");
                words.forEach(word -> {
                    hold(anyOf("w.words", patterns(word)));
                    values.addAll(patterns(word));
                });
            } else {
                text.append(" from case_file w");
            }
            boolean ofCases = findings.isEmpty() && words.isEmpty();
            query.signedOff().ifPresent(closed -> hold(closed, ofCases));
            // The first two are the same in all rows; named here, the index gives the order without sorting.
            order = findings.isEmpty()
                    ? " order by w.case_no TURN"
                    : " order by w.finding TURN, w.state TURN, w.case_no TURN";
        }

        private void hold(String condition, Object value) {
            hold(condition);
            values.add(value);
        }

        private void hold(String condition) {
            text.append(and).append(condition);
            and = " and ";
        }

        private void hold(Map.Entry<String, FindingState> finding) {
            hold(existing("case_finding", "o.finding = ? and o.state = ?"), finding.getKey());
            values.add(finding.getValue().word());
        }

        private void hold(boolean closed, boolean ofCases) {
            String condition = ".signed_off_at is " + (closed ? "not null" : "null");
            hold(ofCases ? "w" + condition : existing("case_file", "o" + condition));
        }

        private static String existing(String table, String condition) {
            return "exists (select 1 from " + table + " o where o.case_no = w.case_no and " + condition + ")";
        }

        private static String anyOf(String column, List<String> patterns) {
            return "(" + String.join(" or ", Collections.nCopies(patterns.size(), column + " like ? escape '!'")) + ")";
        }

        private static List<String> patterns(String word) {
            String plain = word.replace("!", "!!").replace("%", "!%").replace("_", "!_") + "%";
            boolean isShort = !LONG.matcher(word).find() && !SIGNS.matcher(word).matches();
            return isShort ? BEGINNINGS.stream().map(b -> b + plain).toList() : List.of("%" + plain);
        }
    }

    private static CaseSummary summary(ResultSet row) throws SQLException {
        return new CaseSummary(
                new CaseId(row.getString(1)),
                row.getString(2),
                row.getString(3),
                CaseRows.instant(row, 4),
                CaseRows.instant(row, 5),
                Optional.ofNullable(row.getObject(6, OffsetDateTime.class)).map(OffsetDateTime::toInstant),
                row.getLong(7));
    }
}
