package witnessmark.shell.log;

import java.util.List;
import java.util.stream.Collectors;

/** Lines of a CSV file with comma and quotes; text that a spreadsheet would take for a formula is defused. */
public final class CsvText {
    private CsvText() {}

    /** One line without its end; numbers pass as they are. */
    public static String line(List<?> cells) {
        return cells.stream().map(CsvText::cell).collect(Collectors.joining(","));
    }

    private static String cell(Object value) {
        String text = String.valueOf(value);
        if (value instanceof Number) {
            return text;
        }
        boolean formula = !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0;
        String safe = formula ? "'" + text : text;
        boolean quote = safe.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
        return quote ? "\"" + safe.replace("\"", "\"\"") + "\"" : safe;
    }
}
