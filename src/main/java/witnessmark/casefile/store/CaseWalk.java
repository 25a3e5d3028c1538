package witnessmark.casefile.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.casefile.FindingState;

/**
 * How the cases of a query are come by: the table walked, called w, and its conditions.
 *
 * <p>What is made here goes between "select w.case_no" and a limit.
 */
final class CaseWalk {
    private static final String WORDS = "case_text";
    /** What the index on three letters of a shared store finds anywhere; of less it knows only how words begin. */
    private static final Pattern LONG = Pattern.compile("[\\p{L}\\p{N}]{3}");

    private static final Pattern SIGNS = Pattern.compile("[^\\p{L}\\p{N}]*");
    /** What stands before a word, itself in a pattern. */
    private static final List<String> BEGINNINGS = List.of("", "% ", "%\n", "%-");

    private final String table;
    /** What the index that gives the order finds, and what each row is looked at for. */
    private final List<Condition> inOrder = new ArrayList<>();

    private final List<Condition> lookedAt = new ArrayList<>();
    private final List<String> words;
    private final Condition order;

    CaseWalk(CaseQuery query) {
        String turn = query.oldestFirst() ? "asc" : "desc";
        words = query.text().isBlank()
                ? List.of()
                : List.of(query.text().strip().toLowerCase(Locale.ROOT).split("\\s+"));
        List<Map.Entry<String, FindingState>> findings =
                new ArrayList<>(query.findings().entrySet());
        boolean ofFindings = !findings.isEmpty();
        boolean ofWords = !ofFindings && !words.isEmpty();
        table = ofFindings ? "case_finding" : ofWords ? WORDS : "case_file";
        // The first two are the same in all rows; named here, the index gives the order without sorting.
        order = new Condition(
                (ofFindings ? " order by w.finding TURN, w.state TURN, w.case_no TURN" : " order by w.case_no TURN")
                        .replace("TURN", turn));
        Optional<Condition> after = query.after()
                .map(last -> new Condition(
                        "w.case_no " + (query.oldestFirst() ? ">" : "<")
                                + " (select case_no from case_file where case_id = ?)",
                        last.text()));
        if (ofFindings) {
            inOrder.add(new Condition(
                    "w.finding = ? and w.state = ?",
                    findings.get(0).getKey(),
                    findings.get(0).getValue().word()));
            findings.subList(1, findings.size()).forEach(f -> lookedAt.add(found(f)));
        }
        after.ifPresent(inOrder::add);
        words.stream().map(word -> ofWords ? has("w", word) : existing(word)).forEach(lookedAt::add);
        query.signedOff()
                .ifPresent(closed -> lookedAt.add(ofFindings || ofWords ? existing(closed) : closed("w", closed)));
    }

    /** Whether words are walked and one of them is of one or two letters. */
    boolean isOfShortWords() {
        return table.equals(WORDS) && words.stream().anyMatch(CaseWalk::isShort);
    }

    /** All that the query finds, in no order. */
    Condition unordered() {
        return where(Stream.concat(inOrder.stream(), lookedAt.stream()).toList(), " from " + table + " w");
    }

    /** All that the query finds, in the order of the list. */
    Condition whole() {
        return unordered().then(order);
    }

    /** What the query finds among so many rows of the walk, in the order of the list. */
    Condition nearest(long rows) {
        return where(inOrder, " from (select * from " + table + " w")
                .then(order)
                .then(new Condition(" limit ?) w", rows))
                .then(where(lookedAt, ""))
                .then(order);
    }

    /** All that the query finds, the words looked for before there is any order. */
    Condition wordsFirst() {
        // Without the offset a server takes the inner query apart and walks all cases in the order of the list.
        return where(lookedAt, " from (select w.case_no from " + table + " w")
                .then(new Condition(" offset 0) w"))
                .then(where(inOrder, ""))
                .then(order);
    }

    private static Condition where(List<Condition> conditions, String before) {
        return conditions.isEmpty() ? new Condition(before) : Condition.all(before + " where ", conditions);
    }

    private static Condition found(Map.Entry<String, FindingState> finding) {
        return existing(
                "case_finding",
                new Condition(
                        "o.finding = ? and o.state = ?",
                        finding.getKey(),
                        finding.getValue().word()));
    }

    private static Condition existing(String word) {
        return existing(WORDS, has("o", word));
    }

    private static Condition existing(boolean closed) {
        return existing("case_file", closed("o", closed));
    }

    private static Condition closed(String row, boolean closed) {
        return new Condition(row + ".signed_off_at is " + (closed ? "not null" : "null"));
    }

    private static Condition existing(String table, Condition condition) {
        return new Condition(
                "exists (select 1 from " + table + " o where o.case_no = w.case_no and " + condition.text() + ")",
                condition.values());
    }

    private static Condition has(String row, String word) {
        List<String> patterns = patterns(word);
        String like = row + ".words like ? escape '!'";
        return new Condition(
                "(" + String.join(" or ", Collections.nCopies(patterns.size(), like)) + ")", List.copyOf(patterns));
    }

    private static boolean isShort(String word) {
        return !LONG.matcher(word).find() && !SIGNS.matcher(word).matches();
    }

    private static List<String> patterns(String word) {
        String plain = word.replace("!", "!!").replace("%", "!%").replace("_", "!_") + "%";
        return isShort(word) ? BEGINNINGS.stream().map(b -> b + plain).toList() : List.of("%" + plain);
    }

    /** A piece of SQL and the values of its question marks, in their order. */
    record Condition(String text, List<Object> values) {
        Condition(String text, Object... values) {
            this(text, List.of(values));
        }

        static Condition all(String before, List<Condition> conditions) {
            return new Condition(
                    conditions.stream().map(Condition::text).collect(Collectors.joining(" and ", before, "")),
                    conditions.stream().flatMap(c -> c.values.stream()).toList());
        }

        Condition then(Condition next) {
            return new Condition(
                    text + next.text,
                    Stream.concat(values.stream(), next.values.stream()).toList());
        }
    }
}
