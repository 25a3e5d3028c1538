package witnessmark.shell.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvTableTest {

    private static String row(Object... cells) {
        StringWriter out = new StringWriter();
        new CsvTable(out).row(List.of(cells));
        return out.toString();
    }

    /** The signs that OWASP's page on CSV injection lists, from memory; the full-width ones some spreadsheets fold. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+1",
                "-1",
                "@SUM(A1)",
                "\t=1",
                "\r=1",
                "\n=1",
                "  =1",
                "\u00A0=1",
                "\uFEFF=1",
                "\u200B@SUM(A1)",
                "\uFF1D1",
                "\uFF0B1",
                "\uFF0D1",
                "\uFF201"
            })
    void what_a_spreadsheet_could_take_for_a_formula_gets_an_apostrophe(String formula) {
        assertThat(CsvTable.defused(formula)).isEqualTo("'" + formula);
    }

    @Test
    void harmless_text_stays_as_it_is() {
        assertThat(CsvTable.defused("range 3.4 = R")).isEqualTo("range 3.4 = R");
        assertThat(CsvTable.defused("")).isEmpty();
    }

    /** RFC 4180, section 2: quotes double, fields with commas, quotes or line breaks in quotes, lines end in CRLF. */
    @Test
    void cells_are_quoted_as_the_standard_says() {
        assertThat(row("plain", "a,b", "say \"so\"", "two\nlines"))
                .isEqualTo("plain,\"a,b\",\"say \"\"so\"\"\",\"two\nlines\"\r\n");
    }

    @Test
    void a_number_is_a_number_even_below_zero() {
        assertThat(row(-3.5, 4)).isEqualTo("-3.5,4\r\n");
    }

    @Test
    void a_formula_cannot_hide_behind_a_quote() {
        assertThat(row("=HYPERLINK(\"http://bad\",\"x\")"))
                .isEqualTo("\"'=HYPERLINK(\"\"http://bad\"\",\"\"x\"\")\"\r\n");
    }
}
