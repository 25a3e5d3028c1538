package witnessmark.gearbox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitFactorsTest {

    /** Factors of NIST SP 811, appendix B.8, from memory. */
    @ParameterizedTest
    @CsvSource({
        "1, MILE, KILOMETRE, 1.609344",
        "1, MILE_PER_HOUR, KILOMETRE_PER_HOUR, 1.609344",
        "1, MILE_PER_HOUR, METRE_PER_SECOND, 0.44704",
        "1, POUND, KILOGRAM, 0.45359237",
        "1, POUND_FORCE, NEWTON, 4.448222",
        "1, POUND_FOOT, NEWTON_METRE, 1.355818",
        "1, PSI, PASCAL, 6894.757",
        "1, BRITISH_THERMAL_UNIT, JOULE, 1055.056",
        "1, INCH, MILLIMETRE, 25.4",
        "1, US_GALLON, LITRE, 3.785412",
        "212, FAHRENHEIT, CELSIUS, 100",
        "-40, FAHRENHEIT, CELSIUS, -40",
        "9, FAHRENHEIT_CHANGE, CELSIUS_CHANGE, 5",
        "502, REVOLUTION_PER_MILE, REVOLUTION_PER_KILOMETRE, 311.9283385"
    })
    void factors_agree_with_the_handbook(double value, Unit from, Unit to, double expected) {
        assertThat(from.convert(value, to)).isCloseTo(expected, within(Math.abs(expected) * 5e-7 + 1e-9));
    }

    @Property
    void there_and_back_gives_the_same_number(@ForAll @DoubleRange(min = -1e6, max = 1e6) double value) {
        Stream.of(Unit.values()).forEach(from -> Stream.of(Unit.values())
                .filter(to -> to.quantity() == from.quantity())
                .forEach(to -> assertThat(to.convert(from.convert(value, to), from))
                        .isCloseTo(value, within(Math.abs(value) * 1e-12 + 1e-9))));
    }

    @Test
    void a_length_does_not_convert_into_a_mass() {
        assertThatThrownBy(() -> Unit.METRE.convert(1, Unit.KILOGRAM))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("unit: m measures length and does not convert to kg");
    }

    @Test
    void a_figure_shows_metric_and_the_unit_a_us_reader_expects() {
        assertThat(Figure.given(40, Unit.KILOMETRE_PER_HOUR).text()).isEqualTo("40 km/h (24.85 mph)");
        assertThat(Figure.given(2000, Unit.NEWTON_METRE).text()).isEqualTo("2000 Nm (1475 lbft)");
        assertThat(Figure.given(36_000, Unit.KILOGRAM).text()).isEqualTo("36000 kg (79366 lb)");
        assertThat(Figure.given(1181.54, Unit.RPM).text()).isEqualTo("1182 rpm");
        assertThat(Figure.given(0, Unit.KILOJOULE).text()).isEqualTo("0 kJ (0 Btu)");
    }

    /** Common practice: one or two digits more than is known, engine speeds whole, nothing smaller than a shop can use. */
    @Test
    void what_is_computed_is_rounded_once_and_what_is_given_stays_as_it_was_written() {
        assertThat(Figure.computed(34_530.1, Unit.RADIAN_PER_SECOND_SQUARED, "").text())
                .isEqualTo("34500 rad/s2");
        assertThat(Figure.computed(1.31139, Unit.KILOJOULE, "").text()).isEqualTo("1.31 kJ (1.24 Btu)");
        assertThat(Figure.computed(23.8095, Unit.KILOMETRE_PER_HOUR, "").text()).isEqualTo("23.81 km/h (14.79 mph)");
        assertThat(Figure.computed(7.825e-8, Unit.RATIO, "").text()).isEqualTo("below 0.0001");
        assertThat(Figure.computed(-7.825e-8, Unit.RATIO, "").text()).isEqualTo("above -0.0001");
        assertThat(Figure.given(123_456, Unit.KILOGRAM).text()).isEqualTo("123456 kg (272174 lb)");
    }

    /** 130 / 60 x 790 x 3.9 is 6675.5 by hand and a little less in binary; a half goes up. */
    @Test
    void what_is_a_half_by_hand_is_rounded_as_one() {
        assertThat(Figure.computed(130 / 60.0 * 790 * 3.9, Unit.RPM, "").text()).isEqualTo("6676 rpm");
        assertThat(Figure.computed(17 / 60.0 * 300 * 2.1, Unit.RPM, "").text()).isEqualTo("179 rpm");
    }

    @Test
    void a_figure_refuses_what_is_no_number() {
        assertThatThrownBy(() -> Figure.given(Double.NaN, Unit.RPM))
                .hasMessage("figure: NaN is not a finite number of rpm");
    }
}
