package witnessmark.document.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.document.Paper;

class FittingTest {
    private static final Piece CARD = new Piece("card", Piece.Length.ONE_SHEET);
    private static final Piece IN_A_PACKET = new Piece("card", Piece.Length.ONE_SHEET_IF_IT_FITS);
    private static final Piece RECORD = new Piece("record", Piece.Length.AS_IT_COMES);

    @ParameterizedTest
    @CsvSource({"1, 0.1", "3, 0.45", "2, 0.9"})
    void what_lies_well_keeps_its_letters(int sheets, double onLast) {
        assertThat(new Fitting(RECORD, new Extent(sheets, 0, onLast)).rule()).isEmpty();
    }

    @Test
    void a_card_gets_smaller_until_it_lies_on_one_sheet() {
        Fitting fitting = new Fitting(CARD, new Extent(2, 0, 0.2));

        assertThat(fitting.rule()).isEqualTo("#card{font-size:0.94em}");
        assertThat(fitting.goesOn(new Extent(2, 0, 0.05))).isTrue();
        assertThat(fitting.rule()).isEqualTo("#card{font-size:0.88em}");
        assertThat(fitting.goesOn(new Extent(1, 0, 0.97))).isFalse();
        assertThat(fitting.rule()).isEqualTo("#card{font-size:0.88em}");
    }

    @Test
    void a_card_too_long_for_readable_letters_is_refused_by_itself_and_as_small_as_may_be_in_a_packet() {
        Fitting alone = new Fitting(CARD, new Extent(2, 0, 0.9));
        Fitting within = new Fitting(IN_A_PACKET, new Extent(2, 0, 0.9));
        Extent still = new Extent(2, 0, 0.5);
        while (alone.goesOn(still)) {
            assertThat(within.goesOn(still)).isTrue();
        }

        assertThat(alone.isRefused(still)).isTrue();
        assertThat(within.isRefused(still)).isFalse();
        assertThat(within.rule()).isEqualTo("#card{font-size:0.70em}");
    }

    @Test
    void a_record_that_ends_on_a_few_lines_spares_their_sheet_with_slightly_smaller_letters() {
        Fitting fitting = new Fitting(RECORD, new Extent(3, 0, 0.2));

        assertThat(fitting.goesOn(new Extent(3, 0, 0.05))).isTrue();
        assertThat(fitting.goesOn(new Extent(2, 0, 0.99))).isFalse();
        assertThat(fitting.rule()).isEqualTo("#record{font-size:0.94em}");
    }

    @Test
    void where_the_sheet_cannot_be_spared_it_is_filled_with_slightly_larger_letters() {
        Fitting fitting = new Fitting(RECORD, new Extent(2, 0, 0.2));
        for (int smaller = 0; smaller < 3; smaller++) {
            assertThat(fitting.goesOn(new Extent(2, 0, 0.1))).isTrue();
        }

        assertThat(fitting.rule()).isEqualTo("#record{font-size:1.04em}");
        assertThat(fitting.goesOn(new Extent(2, 0, 0.29))).isTrue();
        assertThat(fitting.goesOn(new Extent(2, 0, 0.31))).isFalse();
        assertThat(fitting.rule()).isEqualTo("#record{font-size:1.08em}");
    }

    @Test
    void what_cannot_be_helped_keeps_its_letters() {
        Fitting few = new Fitting(RECORD, new Extent(2, 0, 0.2));
        Fitting some = new Fitting(RECORD, new Extent(2, 0, 0.4));
        int tries = 0;
        while (few.goesOn(new Extent(2, 0, 0.2))) {
            tries++;
        }
        while (some.goesOn(new Extent(2, 0, 0.4))) {
            tries--;
        }

        assertThat(few.rule()).isEmpty();
        assertThat(some.rule()).isEmpty();
        // Of a sheet that is not nearly empty, larger letters are not tried.
        assertThat(tries).isEqualTo(4);
    }

    @Test
    void a_drawing_that_would_begin_the_next_sheet_gets_smaller_until_it_stands_below_what_is_before_it() {
        Piece drawing = new Piece("drawing", Piece.Length.BESIDE_WHAT_IS_BEFORE);
        Extent onTop = new Extent(1, 0.01, 0.2);

        assertThat(new Fitting(drawing, new Extent(1, 0.7, 0.95)).rule()).isEmpty();
        Fitting fitting = new Fitting(drawing, onTop);
        assertThat(fitting.rule()).isEqualTo("#drawing{font-size:0.94em}");
        assertThat(fitting.goesOn(onTop)).isTrue();
        assertThat(fitting.goesOn(new Extent(1, 0.75, 0.99))).isFalse();
        assertThat(fitting.rule()).isEqualTo("#drawing{font-size:0.88em}");

        Fitting hopeless = new Fitting(drawing, onTop);
        while (hopeless.goesOn(onTop)) {
            assertThat(hopeless.rule()).doesNotContain("0.60");
        }
        assertThat(hopeless.rule()).isEmpty();
    }

    @Test
    void a_drawing_that_misses_the_sheet_by_little_is_printed_on_it() throws IOException {
        assertThat(sheets(60)).isEqualTo(1);
        assertThat(sheets(75)).as("smaller, so that it stands below the text").isEqualTo(1);
        assertThat(sheets(130)).as("never tiny").isEqualTo(2);
    }

    /** Sheets of A4 taken by 200 mm of text (A4 less its margins is 267 mm high) and a drawing of so many mm below it. */
    private static int sheets(int high) throws IOException {
        byte[] pdf = new PrintPdf(Paper.A4, Optional.empty())
                .print("<html><head><style>@page{margin:14mm 14mm 16mm 14mm}body{margin:0}"
                        + "svg{width:10em;height:" + high / 3.351 + "em}"
                        + "#d{page-break-inside:avoid;line-height:1}</style></head><body>"
                        + "<div style='height:200mm'>text</div><div class='yields' id='d'>"
                        + "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 10 10'><rect width='9' height='9'/></svg>"
                        + "</div></body></html>");
        try (PDDocument read = Loader.loadPDF(pdf)) {
            return read.getNumberOfPages();
        }
    }
}
