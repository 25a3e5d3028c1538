package witnessmark.diagnosis.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Brier's score of a yes-or-no forecast (Monthly Weather Review, 1950), against published examples. */
class BrierScoreTest {

    /** The worked forecasts of rain in a public encyclopedia's article on the score. */
    @ParameterizedTest
    @CsvSource({"0.7, true, 0.09", "0.3, true, 0.49", "0.5, true, 0.25", "0.5, false, 0.25", "1, false, 1", "1, true, 0"
    })
    void one_forecast(double probability, boolean came, double score) {
        assertThat(Tally.squaredMiss(probability, came)).isCloseTo(score, within(1e-12));
    }

    /** Outcomes 0, 1, 1, 0 and forecasts 0.1, 0.9, 0.8, 0.3: 0.0375 in the documentation of a public statistics library. */
    @Test
    void the_mean_over_four_forecasts() {
        double[] forecasts = {0.1, 0.9, 0.8, 0.3};
        boolean[] came = {false, true, true, false};

        double mean = IntStream.range(0, 4)
                .mapToDouble(i -> Tally.squaredMiss(forecasts[i], came[i]))
                .average()
                .orElseThrow();

        assertThat(mean).isCloseTo(0.0375, within(1e-12));
    }
}
