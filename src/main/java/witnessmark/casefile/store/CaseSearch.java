package witnessmark.casefile.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import org.springframework.jdbc.core.JdbcTemplate;
import witnessmark.casefile.CaseId;

/**
 * Finds cases by what their present state says.
 *
 * <p>Each search walks one table in the order of the list, and stops when the page is full: the index of findings
 * if a finding is asked for, else the words, else the cases themselves. All other conditions are looked up by number.
 *
 * <p>A server cannot guess how often a word of one or two letters is met, and would walk past all cases for one that is
 * nowhere. So the words are walked only as far as the cases nearest to the begin of the list; where these do not fill the
 * page, all that have such a word are taken from the index on letters first and put in order then.
 */
final class CaseSearch {
    private static final Pattern OF_AN_ID = Pattern.compile("[a-z0-9-]*");

    /** How many cases are walked for a short word, and how many more for each case wanted; walked in some 15 ms. */
    private static final long NEAREST = 20_000;

    private static final long NEAREST_FOR_EACH = 20;

    private final JdbcTemplate sql;
    private final long nearest;

    CaseSearch(JdbcTemplate sql) {
        this(sql, NEAREST);
    }

    /** A search that walks so many cases for a short word, and some for each case wanted. */
    CaseSearch(JdbcTemplate sql, long nearest) {
        this.sql = sql;
        this.nearest = nearest;
    }

    List<CaseSummary> list(CaseQuery query) {
        CaseWalk walk = new CaseWalk(query);
        if (!walk.isOfShortWords()) {
            return page(query, walk.whole());
        }
        long near = nearest + NEAREST_FOR_EACH * (query.limit() + query.offset());
        List<CaseSummary> first = page(query, walk.nearest(near));
        return first.size() == query.limit() ? first : page(query, walk.wordsFirst());
    }

    private List<CaseSummary> page(CaseQuery query, CaseWalk.Condition from) {
        List<Object> values = new ArrayList<>(from.values());
        values.add(query.limit());
        values.add(query.offset());
        return sql.query(
                "select f.case_id, f.title, f.unit, f.opened_at, f.changed_at, f.signed_off_at, f.last_number"
                        + " from (select w.case_no" + from.text() + " limit ? offset ?) page"
                        + " join case_file f on f.case_no = page.case_no order by f.case_no "
                        + (query.oldestFirst() ? "asc" : "desc"),
                (row, n) -> summary(row),
                values.toArray());
    }

    long count(CaseQuery query) {
        CaseWalk.Condition from = new CaseWalk(query).unordered();
        Long count = sql.queryForObject(
                "select count(*)" + from.text(), Long.class, from.values().toArray());
        return Objects.requireNonNull(count);
    }

    long countUpTo(long most, CaseQuery query) {
        CaseWalk.Condition from = new CaseWalk(query).unordered();
        List<Object> values = new ArrayList<>(from.values());
        values.add(most);
        Long count = sql.queryForObject(
                "select count(*) from (select w.case_no" + from.text() + " limit ?) counted",
                Long.class,
                values.toArray());
        return Objects.requireNonNull(count);
    }

    /** Ids that begin so, in order, without those whose last entry voids them. */
    List<CaseId> ids(String prefix, int limit) {
        if (!OF_AN_ID.matcher(prefix).matches()) {
            return List.of();
        }
        return sql.query(
                "select case_id from case_file f where case_id like ? and not exists (select 1 from case_entry e"
                        + " where e.case_no = f.case_no and e.entry_number = f.last_number and e.kind = 'text-set'"
                        + " and e.body like '%\"text\":\"voided\"%') order by case_id limit ?",
                (row, n) -> new CaseId(row.getString(1)), prefix + "%", limit);
    }

    /** Ids after the given one, in order. */
    List<CaseId> idsAfter(String last, int limit) {
        return sql.query(
                "select case_id from case_file where case_id > ? order by case_id limit ?",
                (row, n) -> new CaseId(row.getString(1)),
                last,
                limit);
    }

    private static CaseSummary summary(ResultSet row) throws SQLException {
        return new CaseSummary(
                new CaseId(row.getString(1)),
                row.getString(2),
                row.getString(3),
                CaseRows.instant(row, 4),
                CaseRows.instant(row, 5),
                CaseRows.instantOrNone(row, 6),
                row.getLong(7));
    }
}
