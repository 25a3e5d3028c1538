package witnessmark.shell.print;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import de.siegmar.fastcsv.writer.QuoteStrategy;
import java.io.StringWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.List;

/**
 * Writes rows as CSV (RFC 4180). A text that a spreadsheet could take for a formula gets an apostrophe before it, so
 * that it is shown and not computed (OWASP, CSV injection; list of signs from memory). Numbers are written plain.
 */
public final class CsvTable {
    private static final String FORMULA_STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    /** Some spreadsheets part cells at a semicolon too. */
    private static final QuoteStrategy ALSO_SEMICOLONS = new QuoteStrategy() {
        @Override
        public boolean quoteValue(int line, int field, String value) {
            return value.indexOf(';') >= 0;
        }
    };

    private final CsvWriter out;

    public CsvTable(Writer out) {
        this(out, LineDelimiter.CRLF);
    }

    private CsvTable(Writer out, LineDelimiter end) {
        this.out = CsvWriter.builder()
                .lineDelimiter(end)
                .quoteStrategy(ALSO_SEMICOLONS)
                .bufferSize(0)
                .build(out);
    }

    /** One row of texts and {@link Number}s. */
    public void row(List<?> cells) {
        out.writeRecord(cells.stream().map(CsvTable::cell).toList());
    }

    /** One row without its end. */
    public static String line(List<?> cells) {
        StringWriter line = new StringWriter();
        new CsvTable(line, LineDelimiter.LF).row(cells);
        return line.toString().stripTrailing();
    }

    private static String cell(Object value) {
        if (value instanceof Double number) {
            return Double.isFinite(number) ? plain(BigDecimal.valueOf(number)) : number.toString();
        }
        return value instanceof Number ? value.toString() : defused(value.toString());
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    /** The text as a spreadsheet may have it: blanks and unseen signs before a formula do not hide it. */
    static String defused(String text) {
        int first = 0;
        while (first < text.length() && isPassedOver(text.charAt(first))) {
            first++;
        }
        boolean formula = starts(text, 0) || starts(text, first);
        return formula ? "'" + text : text;
    }

    /** The text that {@link #row} wrote as this cell. */
    public static String undefused(String cell) {
        boolean added = cell.startsWith("'") && defused(cell.substring(1)).equals(cell);
        return added ? cell.substring(1) : cell;
    }

    private static boolean isPassedOver(char c) {
        return Character.isWhitespace(c)
                || Character.isSpaceChar(c)
                || Character.isISOControl(c)
                || Character.getType(c) == Character.FORMAT;
    }

    private static boolean starts(String text, int at) {
        return at < text.length() && FORMULA_STARTS.indexOf(text.charAt(at)) >= 0;
    }
}
