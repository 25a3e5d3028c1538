package witnessmark.shell.interview;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.Limits;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.gearbox.Unit;
import witnessmark.interview.NotAnAnswer;
import witnessmark.knowledge.KnowledgeBase;

/** Limits in one line, as a technician reads them out of a manual. The ways to write them are our own, no source. */
class LimitLineTest {
    private static final KnowledgeBase KNOWLEDGE = ShippedKnowledge.load();

    private static Limits read(String line, Unit unit, String measure) {
        return LimitLine.of(line, unit, KNOWLEDGE.measures().get(measure), "manual");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "57 to 62 | 57 | 62",
                "57 62 | 57 | 62",
                "57-62 psi | 57 | 62",
                "57 – 62 | 57 | 62",
                "57 psi to 62 psi | 57 | 62",
                "from 57 to 62 | 57 | 62",
                "entre 57 y 62 | 57 | 62",
                "low 57; high 62 | 57 | 62",
                "min 57, max 62 | 57 | 62",
                "mín 57 | 57 |",
                "at least 57 | 57 |",
                ">= 57 | 57 |",
                "max 62 | | 62",
                "up to 62 psi | | 62",
                "not under 57 | 57 |",
                "not over 62 | | 62"
            })
    void two_sides_or_one(String line, Double low, Double high) {
        Limits limits = read(line, Unit.PSI, "range-regulator-pressure");
        assertThat(limits.low()).isEqualTo(low == null ? OptionalDouble.empty() : OptionalDouble.of(low));
        assertThat(limits.high()).isEqualTo(high == null ? OptionalDouble.empty() : OptionalDouble.of(high));
        assertThat(limits.source()).isEqualTo("manual");
    }

    @Test
    void a_bare_number_is_the_side_that_the_measure_is_judged_by() {
        assertThat(read("100", Unit.PSI, "vehicle-tank-pressure").low()).hasValue(100);
        assertThat(read("1,5", Unit.SECOND, "range-time-into-low").high()).hasValue(1.5);
        assertThatThrownBy(() -> read("57", Unit.PSI, "range-regulator-pressure"))
                .isInstanceOf(NotAnAnswer.class)
                .hasMessageContaining("'57' is no limit")
                .hasMessageContaining("min 57 or max 62");
    }

    /** 1 bar is 100 kPa and 1 in is 25.4 mm by definition (SI Brochure; international inch). */
    @Test
    void another_unit_behind_a_number_is_converted() {
        assertThat(read("390 kPa to 4.3", Unit.BAR, "range-regulator-pressure").low())
                .hasValue(3.9);
        assertThat(read("min 0.5 in", Unit.MILLIMETRE, "clutch-free-travel").low())
                .hasValue(12.7);
    }

    @Test
    void whose_limit_it_is_may_stand_behind() {
        assertThat(read("57 to 62; from the maker's bulletin", Unit.PSI, "range-regulator-pressure")
                        .source())
                .isEqualTo("the maker's bulletin");
    }

    @Test
    void a_temperature_may_be_below_zero() {
        assertThat(read("-5 to 110", Unit.CELSIUS, "oil-temperature").low()).hasValue(-5);
    }

    @ParameterizedTest
    @ValueSource(strings = {"good", "57 to 62 to 70", "about right", "62 to 57", "57 furlong"})
    void what_is_no_limit_is_refused(String line) {
        assertThatThrownBy(() -> read(line, Unit.PSI, "range-regulator-pressure"))
                .isInstanceOf(NotAnAnswer.class);
    }
}
