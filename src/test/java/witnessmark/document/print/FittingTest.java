package witnessmark.document.print;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FittingTest {
    private static final Piece CARD = new Piece("card", Piece.Length.ONE_SHEET);
    private static final Piece IN_A_PACKET = new Piece("card", Piece.Length.ONE_SHEET_IF_IT_FITS);
    private static final Piece RECORD = new Piece("record", Piece.Length.AS_IT_COMES);

    @ParameterizedTest
    @CsvSource({"1, 0.1", "3, 0.45", "2, 0.9"})
    void what_lies_well_keeps_its_letters(int sheets, double onLast) {
        assertThat(new Fitting(RECORD, new Extent(sheets, onLast)).rule()).isEmpty();
    }

    @Test
    void a_card_gets_smaller_until_it_lies_on_one_sheet() {
        Fitting fitting = new Fitting(CARD, new Extent(2, 0.2));

        assertThat(fitting.rule()).isEqualTo("#card{font-size:0.94em}");
        assertThat(fitting.goesOn(new Extent(2, 0.05))).isTrue();
        assertThat(fitting.rule()).isEqualTo("#card{font-size:0.88em}");
        assertThat(fitting.goesOn(new Extent(1, 0.97))).isFalse();
        assertThat(fitting.rule()).isEqualTo("#card{font-size:0.88em}");
    }

    @Test
    void a_card_too_long_for_readable_letters_is_refused_by_itself_and_as_small_as_may_be_in_a_packet() {
        Fitting alone = new Fitting(CARD, new Extent(2, 0.9));
        Fitting within = new Fitting(IN_A_PACKET, new Extent(2, 0.9));
        Extent still = new Extent(2, 0.5);
        while (alone.goesOn(still)) {
            assertThat(within.goesOn(still)).isTrue();
        }

        assertThat(alone.isRefused(still)).isTrue();
        assertThat(within.isRefused(still)).isFalse();
        assertThat(within.rule()).isEqualTo("#card{font-size:0.70em}");
    }

    @Test
    void a_record_that_ends_on_a_few_lines_spares_their_sheet_with_slightly_smaller_letters() {
        Fitting fitting = new Fitting(RECORD, new Extent(3, 0.2));

        assertThat(fitting.goesOn(new Extent(3, 0.05))).isTrue();
        assertThat(fitting.goesOn(new Extent(2, 0.99))).isFalse();
        assertThat(fitting.rule()).isEqualTo("#record{font-size:0.94em}");
    }

    @Test
    void where_the_sheet_cannot_be_spared_it_is_filled_with_slightly_larger_letters() {
        Fitting fitting = new Fitting(RECORD, new Extent(2, 0.2));
        for (int smaller = 0; smaller < 3; smaller++) {
            assertThat(fitting.goesOn(new Extent(2, 0.1))).isTrue();
        }

        assertThat(fitting.rule()).isEqualTo("#record{font-size:1.04em}");
        assertThat(fitting.goesOn(new Extent(2, 0.29))).isTrue();
        assertThat(fitting.goesOn(new Extent(2, 0.31))).isFalse();
        assertThat(fitting.rule()).isEqualTo("#record{font-size:1.08em}");
    }

    @Test
    void what_cannot_be_helped_keeps_its_letters() {
        Fitting few = new Fitting(RECORD, new Extent(2, 0.2));
        Fitting some = new Fitting(RECORD, new Extent(2, 0.4));
        int tries = 0;
        while (few.goesOn(new Extent(2, 0.2))) {
            tries++;
        }
        while (some.goesOn(new Extent(2, 0.4))) {
            tries--;
        }

        assertThat(few.rule()).isEmpty();
        assertThat(some.rule()).isEmpty();
        // Of a sheet that is not nearly empty, larger letters are not tried.
        assertThat(tries).isEqualTo(4);
    }
}
