package witnessmark.casefile.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.springframework.jdbc.core.JdbcTemplate;
import witnessmark.casefile.CaseId;

/** Finds cases by what their present state says. */
final class CaseSearch {
    private static final Pattern OF_AN_ID = Pattern.compile("[a-z0-9-]*");

    private final JdbcTemplate sql;

    CaseSearch(JdbcTemplate sql) {
        this.sql = sql;
    }

    List<CaseSummary> list(CaseQuery query) {
        List<Object> values = new ArrayList<>();
        String text = "select f.case_id, f.title, f.unit, f.opened_at, f.changed_at, f.signed_off_at, f.last_number"
                + condition(query, values) + " order by f.changed_at desc, f.case_id limit ? offset ?";
        values.add(query.limit());
        values.add(query.offset());
        return sql.query(text, (row, n) -> summary(row), values.toArray());
    }

    long count(CaseQuery query) {
        List<Object> values = new ArrayList<>();
        String text = "select count(*)" + condition(query, values);
        return sql.queryForObject(text, Long.class, values.toArray());
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

    private static String condition(CaseQuery query, List<Object> values) {
        StringBuilder text = new StringBuilder(" from case_file f");
        List<String> words = query.text().isBlank()
                ? List.of()
                : List.of(query.text().strip().split("\\s+"));
        query.findings().forEach((finding, state) -> {
            String alias = "s" + values.size();
            text.append(" join case_finding %1$s on %1$s.case_id = f.case_id and %1$s.finding = ? and %1$s.state = ?"
                    .formatted(alias));
            values.add(finding);
            values.add(state.word());
        });
        text.append(words.isEmpty() ? "" : " join case_text t on t.case_id = f.case_id");
        String and = " where ";
        for (String word : words) {
            text.append(and).append("t.words like ? escape '!'");
            values.add("%" + escaped(word.toLowerCase(Locale.ROOT)) + "%");
            and = " and ";
        }
        if (query.signedOff().isPresent()) {
            text.append(and)
                    .append(query.signedOff().get() ? "f.signed_off_at is not null" : "f.signed_off_at is null");
        }
        return text.toString();
    }

    private static String escaped(String word) {
        return word.replace("!", "!!").replace("%", "!%").replace("_", "!_");
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
