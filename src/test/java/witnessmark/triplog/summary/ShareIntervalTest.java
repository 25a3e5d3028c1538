package witnessmark.triplog.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against closed forms of the Clopper-Pearson interval: for none of n the upper limit is 1 - 0.025^(1/n). */
class ShareIntervalTest {
    @Test
    void none_and_all_have_limits_in_closed_form() {
        assertThat(ShareInterval.of(0, 10).lower()).isZero();
        assertThat(ShareInterval.of(0, 10).upper()).isCloseTo(1 - Math.pow(0.025, 0.1), within(1e-9));
        assertThat(ShareInterval.of(10, 10).lower()).isCloseTo(Math.pow(0.025, 0.1), within(1e-9));
        assertThat(ShareInterval.of(10, 10).upper()).isEqualTo(1);
    }

    @Test
    void one_of_n_has_a_lower_limit_in_closed_form() {
        assertThat(ShareInterval.of(1, 10).lower()).isCloseTo(1 - Math.pow(0.975, 0.1), within(1e-9));
    }

    /** Recomputed in a public statistics package (base R, binom.test). */
    @ParameterizedTest
    @CsvSource({"9, 30, 0.1473451848, 0.4939590415", "3, 40, 0.0157421799, 0.2038647487", "0, 10, 0, 0.3084971078"})
    void limits_agree_with_a_statistics_package(long count, long of, double lower, double upper) {
        assertThat(ShareInterval.of(count, of).lower()).isCloseTo(lower, within(1e-7));
        assertThat(ShareInterval.of(count, of).upper()).isCloseTo(upper, within(1e-7));
    }

    @Test
    void limits_are_said_in_hundredths_at_most_two_digits() {
        assertThat(ShareInterval.of(1, 10).words()).isEqualTo("(95 %: under 1 to 45 in 100)");
    }

    @Test
    void more_than_all_is_refused() {
        assertThatThrownBy(() -> ShareInterval.of(3, 2)).hasMessageContaining("3 of 2");
    }
}
