package witnessmark.shell.print;

import java.io.IOException;
import java.util.List;

/**
 * Writes rows as CSV (RFC 4180). A text that a spreadsheet could take for a formula gets an apostrophe before it, so
 * that it is shown and not computed (OWASP, CSV injection; list of signs from memory). Numbers are written as they are.
 */
public final class CsvTable {
    private static final String FORMULA_STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private final Appendable out;

    public CsvTable(Appendable out) {
        this.out = out;
    }

    /** One row of texts and {@link Number}s. */
    public void row(List<?> cells) throws IOException {
        for (int i = 0; i < cells.size(); i++) {
            out.append(i == 0 ? "" : ",").append(cell(cells.get(i)));
        }
        out.append("\r\n");
    }

    private static String cell(Object value) {
        return value instanceof Number ? value.toString() : quoted(defused(value.toString()));
    }

    /** The text as a spreadsheet may have it. */
    static String defused(String text) {
        String shown = text.stripLeading();
        boolean formula = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0
                || !shown.isEmpty() && FORMULA_STARTS.indexOf(shown.charAt(0)) >= 0;
        return formula ? "'" + text : text;
    }

    private static String quoted(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r' || c == ';');
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
