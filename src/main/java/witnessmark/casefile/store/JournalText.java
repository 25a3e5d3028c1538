package witnessmark.casefile.store;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.casefile.history.CanonicalText;

/**
 * A line of the journal as text: one JSON object, its members always in this order.
 *
 * <pre>
 * {"line":7,"left":0,"before":"...","case":"t1","entry":3,"time":"2026-03-02T08:15:00.000Z","who":"anna",
 *  "previous":"...","hash":"...","lineHash":"...","change":{"kind":"note-added","note":"..."}}
 * </pre>
 *
 * {@code left} is how many lines of the same change follow; only with the last of them, left 0, do they count.
 */
record JournalText(StoreLine line, long left) {
    private static final String HASH = "\"([0-9a-f]{64})\"";
    private static final Pattern FORM = Pattern.compile(
            "\\{\"line\":(\\d{1,18}),\"left\":(\\d{1,18}),\"before\":" + HASH
                    + ",\"case\":\"([a-z0-9-]{1,40})\",\"entry\":(\\d{1,18}),\"time\":\"([0-9T:.Z+-]{1,40})\""
                    + ",\"who\":(\"(?:[^\"\\\\]++|\\\\.)*+\"),\"previous\":" + HASH + ",\"hash\":" + HASH
                    + ",\"lineHash\":"
                    + HASH + ",\"change\":(\\{.*\\})\\}",
            Pattern.DOTALL);

    /** The text without a line end. */
    String text() {
        CaseRows.Row row = line.row();
        return "{\"line\":" + line.number() + ",\"left\":" + left + ",\"before\":\"" + line.before() + "\",\"case\":\""
                + line.caseId() + "\",\"entry\":" + row.number() + ",\"time\":\"" + CanonicalText.of(row.time())
                + "\",\"who\":" + CanonicalText.quoted(row.who()) + ",\"previous\":\"" + row.previousHash()
                + "\",\"hash\":\"" + row.hash() + "\",\"lineHash\":\"" + line.hash() + "\",\"change\":" + row.body()
                + "}";
    }

    /** What the text says, or empty if it is no line of the journal or not as it was written. */
    static Optional<JournalText> read(String text) {
        Matcher m = FORM.matcher(text);
        if (!m.matches()) {
            return Optional.empty();
        }
        try {
            CaseRows.Row row = new CaseRows.Row(
                    Long.parseLong(m.group(5)),
                    Instant.parse(m.group(6)),
                    unquoted(m.group(7)),
                    m.group(11),
                    m.group(8),
                    m.group(9));
            StoreLine line = new StoreLine(Long.parseLong(m.group(1)), m.group(3), m.group(4), row, m.group(10));
            return line.isTrue() ? Optional.of(new JournalText(line, Long.parseLong(m.group(2)))) : Optional.empty();
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    private static String unquoted(String quoted) {
        StringBuilder plain = new StringBuilder(quoted.length());
        for (int i = 1; i < quoted.length() - 1; i++) {
            char c = quoted.charAt(i);
            if (c == '\\') {
                char next = quoted.charAt(++i);
                plain.append(next == 'n' ? '\n' : next == 't' ? '\t' : next);
            } else {
                plain.append(c);
            }
        }
        return plain.toString();
    }
}
