package witnessmark.shell.print;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScreenFiguresTest {

    /** A count of events carries two digits at most; worked by hand. */
    @ParameterizedTest
    @CsvSource({"0, 0", "0.314, 0.31", "4.23, 4.2", "57.4, 57", "99.6, 100", "113, 110", "611.2, 610"})
    void a_rate_has_two_digits_however_large_it_is(double rate, String said) {
        assertThat(ScreenFigures.figure(rate)).isEqualTo(said);
    }
}
