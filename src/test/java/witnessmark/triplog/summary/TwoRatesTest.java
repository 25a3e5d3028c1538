package witnessmark.triplog.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Against R 4.2.2 and a separate Python computation that agree to nine digits; the first two inputs are those of the help
 * pages of poisson.test and of the package rateratio.test.
 */
class TwoRatesTest {

    @ParameterizedTest
    @CsvSource({
        "11, 800, 21, 3011, 1.971488095, 0.1120173196, 0.8584264034, 4.277265944",
        "2, 17877, 9, 16660, 0.2070941557, 0.05010649561, 0.02177406276, 1.000549104",
        "18, 10.1, 42, 9.6, 0.4073550212, 0.001381705966, 0.2207165116, 0.7231566876",
        "0, 4.0, 5, 3.2, 0, 0.03468305983, 0, 0.8730232841",
        "10, 2.5, 12, 2.0, 0.6666666667, 0.4585347276, 0.2580077422, 1.683664052"
    })
    void ratio_p_and_interval_are_those_of_the_exact_conditional_test(
            long after,
            double afterOver,
            long before,
            double beforeOver,
            double ratio,
            double p,
            double lower,
            double upper) {
        TwoRates rates = TwoRates.compare(before, beforeOver, after, afterOver);

        assertThat(rates.ratio()).isEqualTo(ratio, within(1e-9));
        assertThat(rates.pTwoSided()).isEqualTo(p, within(1e-7));
        assertThat(rates.lower()).isEqualTo(lower, within(1e-6 * (1 + lower)));
        assertThat(rates.upper()).isEqualTo(upper, within(1e-6 * (1 + upper)));
    }

    /**
     * A public statistics manual: 41 events in 28,010 person-years against 15 in 19,017, ratio 1.8558, exact 95 % interval
     * 1.0057 to 3.6093 (Rothman's breast cancer example; figures from memory, recomputed).
     */
    @Test
    void the_rate_ratio_of_a_statistics_manual() {
        TwoRates rates = TwoRates.compare(15, 19_017, 41, 28_010);

        assertThat(rates.ratio()).isEqualTo(1.8558, within(5e-5));
        assertThat(rates.lower()).isEqualTo(1.0057, within(5e-5));
        assertThat(rates.upper()).isEqualTo(3.6093, within(5e-5));
        assertThat(rates.pTwoSided()).isLessThan(0.05);
    }

    @Test
    void the_chance_that_so_few_are_left_is_one_sided() {
        assertThat(TwoRates.compare(42, 9.6, 18, 10.1).pFell()).isEqualTo(0.0006908529832, within(1e-9));
    }

    @Property(tries = 300)
    void p_is_below_five_per_cent_only_if_the_interval_leaves_one_out(
            @ForAll @IntRange(max = 60) int before,
            @ForAll @IntRange(max = 60) int after,
            @ForAll @DoubleRange(min = 0.5, max = 20) double beforeOver,
            @ForAll @DoubleRange(min = 0.5, max = 20) double afterOver) {
        TwoRates rates = TwoRates.compare(before, beforeOver, after, afterOver);

        boolean outside = rates.lower() > 1 || rates.upper() < 1;
        if (Math.abs(rates.pTwoSided() - 0.05) > 1e-6) {
            assertThat(rates.pTwoSided() < 0.05).isEqualTo(outside);
        }
    }
}
