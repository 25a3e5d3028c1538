package witnessmark.triplog.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against R 4.2.2 (qchisq, poisson.test), recomputed. */
class CountIntervalTest {

    @ParameterizedTest
    @CsvSource({
        "0, 0, 3.688879454",
        "1, 0.02531780798, 5.571643391",
        "2, 0.2422092785, 7.224687668",
        "3, 0.6186721229, 8.767273070",
        "5, 1.623486390, 11.668332080",
        "10, 4.795388696, 18.390356040",
        "25, 16.178681850, 36.904931700",
        "100, 81.363991250, 121.626793800"
    })
    void limits_of_a_count_are_those_of_garwood(long count, double lower, double upper) {
        CountInterval interval = CountInterval.of(count, 1);

        assertThat(interval.lower()).isEqualTo(lower, within(1e-6));
        assertThat(interval.upper()).isEqualTo(upper, within(1e-6));
    }

    @Test
    void an_exposure_divides_count_and_limits() {
        // R help page of poisson.test: 137 events in 24.19893
        CountInterval interval = CountInterval.of(137, 24.19893);

        assertThat(interval.rate()).isEqualTo(5.661407343, within(1e-8));
        assertThat(interval.lower()).isEqualTo(4.753124805, within(1e-6));
        assertThat(interval.upper()).isEqualTo(6.692709334, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"0.90, 17.382, 34.916", "0.99, 13.995, 41.001"})
    void other_levels_hold_too(double level, double lower, double upper) {
        CountInterval interval = CountInterval.of(25, 1, level);

        assertThat(interval.lower()).isEqualTo(lower, within(1e-3));
        assertThat(interval.upper()).isEqualTo(upper, within(2e-3));
    }

    @Test
    void an_exposure_of_nothing_is_refused() {
        assertThatThrownBy(() -> CountInterval.of(3, 0)).hasMessageContaining("an exposure above 0");
    }
}
