package witnessmark.shell.cases;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.casefile.EarlierSample;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.gearbox.Unit;

class EarlierSamplesTest {
    private static final EarlierSamples IRON =
            new EarlierSamples(ShippedKnowledge.load().measures().get("oil-iron"), Unit.MILLIGRAM_PER_KILOGRAM);

    @Test
    void value_day_and_odometer_are_read_in_plain_words_or_without() {
        assertThat(IRON.of("60 on 2026-03-14 at 812000 km; 55 2025-09-02"))
                .containsExactly(
                        new EarlierSample(60, LocalDate.of(2026, 3, 14), OptionalDouble.of(812_000)),
                        new EarlierSample(55, LocalDate.of(2025, 9, 2), OptionalDouble.empty()));
        assertThat(IRON.of("  ")).isEmpty();
    }

    /** 500,000 mi are 804,672 km (1 mi = 1.609344 km, international yard and pound agreement). */
    @Test
    void an_odometer_may_read_miles() {
        List<EarlierSample> read = IRON.of("60 on 2026-03-14 at 500000 mi");

        assertThat(read.get(0).odometerKm().getAsDouble()).isCloseTo(804_672, within(0.5));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            60                           | '60' is no earlier sample
            '; 60 on 2026-03-14'         | '' is no earlier sample
            sixty on 2026-03-14          | earlier value 'sixty' is not a number
            -5 on 2026-03-14             | -5 mg/kg cannot be
            60 on 14.3.2026              | '14.3.2026' is no day
            60 on 2026-03-14 at home     | odometer 'home' is not a number
            60 on 2026-03-14 at 8 bar    | odometer '8 bar' is in bar
            """)
    void what_is_none_is_refused(String typed, String says) {
        assertThatThrownBy(() -> IRON.of(typed)).hasMessageContaining(says);
    }
}
