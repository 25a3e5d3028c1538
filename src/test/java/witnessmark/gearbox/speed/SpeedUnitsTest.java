package witnessmark.gearbox.speed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;

/** A mile is 1.609344 km by definition (SI brochure): 100 km/h are 62.137 mph, 2 km/h 1.243; recomputed. */
class SpeedUnitsTest {

    private static SpeedUnits readBy(String words) {
        return SpeedUnits.of(Units.parse(words).orElseThrow());
    }

    private static Figure kmh(double speed) {
        return Figure.given(speed, Unit.KILOMETRE_PER_HOUR);
    }

    @Test
    void a_shop_reads_the_speeds_of_its_units_and_both_where_nothing_was_chosen() {
        assertThat(readBy("metric")).isEqualTo(SpeedUnits.METRIC);
        assertThat(readBy("us")).isEqualTo(SpeedUnits.US);
        assertThat(SpeedUnits.of(Units.BOTH)).isEqualTo(SpeedUnits.BOTH);
        assertThat(readBy("psi")).isEqualTo(SpeedUnits.BOTH);
        assertThat(List.of(SpeedUnits.values()))
                .extracting(SpeedUnits::heading)
                .containsExactly("km/h", "mph", "km/h (mph)");
    }

    @ParameterizedTest
    @CsvSource({
        "METRIC, 100.0, 100 km/h, 100 km/h",
        "US, 62.1, 62 mph, 62 mph",
        "BOTH, 100.0 (62.1), 100 km/h (62 mph), 100 km/h (62 mph)"
    })
    void a_speed_is_said_to_a_tenth_in_a_table_and_whole_with_its_unit(
            SpeedUnits units, String cell, String limit, String whole) {
        assertThat(units.cell(kmh(100))).isEqualTo(cell);
        assertThat(units.limit(kmh(100))).isEqualTo(limit);
        assertThat(units.whole(kmh(100))).isEqualTo(whole);
    }

    @Test
    void a_limit_is_rounded_down_and_an_aim_to_the_nearest() {
        assertThat(SpeedUnits.BOTH.limit(kmh(90.9))).isEqualTo("90 km/h (56 mph)");
        assertThat(SpeedUnits.BOTH.whole(kmh(90.9))).isEqualTo("91 km/h (56 mph)");
    }

    @ParameterizedTest
    @CsvSource({"1.96, 1.9 km/h (1.2 mph)", "2, 2 km/h (1.2 mph)", "3.3, 3 km/h (2 mph)"})
    void below_two_a_crawl_is_said_to_a_tenth(double speed, String limit) {
        assertThat(SpeedUnits.BOTH.limit(kmh(speed))).isEqualTo(limit);
    }

    @Test
    void a_ceiling_says_its_gear_and_both_speeds_rounded_down() {
        Gear top = SampleTrucks.splitHigh().build().gears().top();
        RoadSpeeds.Ceiling ceiling = new RoadSpeeds.Ceiling(top, kmh(99.9));

        assertThat(ceiling.limit()).isEqualTo("99 km/h (62 mph)");
        assertThat(ceiling.line()).isEqualTo(top.id() + ": 99 km/h (62 mph)");
        assertThat(ceiling.line(SpeedUnits.US)).isEqualTo(top.id() + ": 62 mph");
    }
}
