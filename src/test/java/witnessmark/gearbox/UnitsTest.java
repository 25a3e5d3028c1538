package witnessmark.gearbox;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Conversions: 1 bar is 14.5038 psi, 1 mile 1.609344 km (international yard and pound agreement 1959). */
class UnitsTest {
    private static Units units(String words) {
        return Units.parse(words).orElseThrow();
    }

    @Test
    void a_figure_given_is_read_in_the_units_chosen_and_as_it_was_given_behind() {
        assertThat(units("us").given(4, Unit.BAR)).isEqualTo("58.02 psi (4 bar)");
        assertThat(units("us").given(57.25, Unit.PSI)).isEqualTo("57.25 psi");
        assertThat(units("metric").given(238_607, Unit.MILE)).isEqualTo("384001 km (238607 mi)");
    }

    @Test
    void a_later_word_stands_for_an_earlier_of_its_kind_and_speed_goes_with_distance() {
        Units mixed = units("metric psi mi");

        assertThat(mixed.shown(Unit.BAR)).isEqualTo(Unit.PSI);
        assertThat(mixed.shown(Unit.KILOMETRE_PER_HOUR)).isEqualTo(Unit.MILE_PER_HOUR);
        assertThat(mixed.shown(Unit.INCH)).isEqualTo(Unit.MILLIMETRE);
        assertThat(units("psi bar").shown(Unit.PSI)).isEqualTo(Unit.BAR);
        assertThat(units("us both")).isEqualTo(units("us"));
    }

    @Test
    void figures_are_said_in_both_where_nothing_was_chosen_and_else_in_one() {
        Figure speed = Figure.given(60, Unit.KILOMETRE_PER_HOUR);

        assertThat(speed.text(Units.BOTH)).isEqualTo("60 km/h (37.28 mph)");
        assertThat(speed.text(units("us"))).isEqualTo("37.28 mph");
        assertThat(speed.text(units("metric"))).isEqualTo("60 km/h");
        assertThat(speed.text(units("psi"))).isEqualTo("60 km/h (37.28 mph)");
        assertThat(Figure.given(1500, Unit.RPM).text(units("us"))).isEqualTo("1500 rpm");
    }

    @Test
    void stress_goes_with_the_pressure_that_the_shop_reads() {
        Figure stress = Figure.computed(522, Unit.MEGAPASCAL, "");

        assertThat(stress.text(units("metric"))).isEqualTo("522 MPa");
        assertThat(stress.text(units("us"))).isEqualTo("75700 psi");
        assertThat(stress.text(units("us kpa"))).isEqualTo("522 MPa");
        assertThat(stress.text(units("metric psi"))).isEqualTo("75700 psi");
        assertThat(units("metric").shown(Unit.PSI)).isEqualTo(Unit.BAR);
    }

    @Test
    void a_word_that_is_no_unit_of_the_shop_is_not_taken() {
        assertThat(Units.parse("metric furlong")).isEmpty();
        assertThat(Units.parse("rpm")).isEmpty();
        assertThat(Units.parse("")).isEmpty();
    }
}
