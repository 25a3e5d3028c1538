package witnessmark.gearbox.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

class RoadSpeedsTest {

    private static TruckProfile oneGear(double ratio, double axle, double revsPerKm) {
        return TruckDraft.named("one-gear")
                .mainRatios(List.of(ratio))
                .set(Parameter.AXLE_RATIO, axle)
                .set(Parameter.TYRE_REVS, revsPerKm)
                .set(Parameter.GOVERNED_RPM, 3500)
                .build();
    }

    private static double kmh(double rpm, double ratio, double axle, double revsPerKm) {
        TruckProfile truck = oneGear(ratio, axle, revsPerKm);
        return new RoadSpeeds(truck).roadSpeed(truck.gears().top(), rpm).value();
    }

    /** v = 60 n / (i_gear i_axle N), recomputed outside the program. */
    @ParameterizedTest
    @CsvSource({
        "1500, 1.00, 3.50, 312, 82.41758242",
        "1500, 0.78, 3.50, 312, 105.6635672",
        "1500, 0.78, 3.50, 311.9283385, 105.6878420",
        "2000, 1.35, 4.10, 320, 67.75067751"
    })
    void road_speed_agrees_with_worked_figures(double rpm, double ratio, double axle, double revs, double expected) {
        assertThat(kmh(rpm, ratio, axle, revs)).isCloseTo(expected, within(expected * 1e-8));
    }

    /** A public road speed calculator prints 109.7 and 80 mph for these; recomputed to more places. */
    @ParameterizedTest
    @CsvSource({"3000, 0.63, 3.55, 27.5, 109.7415274", "1800, 0.667, 3.21, 32, 80.03456183"})
    void road_speed_agrees_with_a_public_calculator(
            double rpm, double ratio, double axle, double diameterInch, double expectedMph) {
        double revsPerKm = 1e6 / (Math.PI * diameterInch * 25.4);

        double mph = Unit.KILOMETRE_PER_HOUR.convert(kmh(rpm, ratio, axle, revsPerKm), Unit.MILE_PER_HOUR);

        assertThat(mph).isCloseTo(expectedMph, within(expectedMph * 1e-8));
    }

    /** Inverse of the same formula, recomputed. */
    @Test
    void engine_speed_is_the_inverse() {
        TruckProfile truck = oneGear(0.78, 3.5, 312);

        assertThat(new RoadSpeeds(truck).engineSpeed(truck.gears().top(), 90).value())
                .isCloseTo(1277.64, within(1e-6));
    }

    /** 1400 rpm at 65 km/h with axle 3.5 and 312 turns a km speak of a ratio of 1.183431953: recomputed. */
    @Test
    void engine_and_road_speed_tell_the_ratio() {
        TruckProfile truck = oneGear(1.183431953, 3.5, 312);

        assertThat(new RoadSpeeds(truck).engineSpeed(truck.gears().top(), 65).value())
                .isCloseTo(1400, within(1e-5));
    }

    @Test
    void the_low_range_ceiling_is_governed_speed_in_the_gear() {
        TruckProfile truck = SampleTrucks.splitHigh().build();

        List<RoadSpeeds.Ceiling> ceilings = new RoadSpeeds(truck).lowRangeCeilings();

        assertThat(ceilings).extracting(c -> c.gear().id()).containsExactly("1", "2", "3", "4", "Rl");
        // 2000 rpm x 60 / (1.0 x 3.4 x 3.5 x 312), by hand.
        assertThat(ceilings.get(3).roadSpeed().value()).isCloseTo(32.320620555915, within(1e-9));
    }

    @Test
    void the_cruising_band_runs_from_the_lowest_pulling_to_governed_speed() {
        RoadSpeeds.CruisingBand band = new RoadSpeeds(SampleTrucks.splitHigh().build()).cruisingBand();

        assertThat(band.gear().id()).isEqualTo("8o");
        assertThat(band.from().value()).isCloseTo(1100 * 60 / (0.85 * 3.5 * 312), within(1e-9));
        assertThat(band.most().value()).isCloseTo(2000 * 60 / (0.85 * 3.5 * 312), within(1e-9));
        assertThat(band.ease().value()).isCloseTo(0.85 * band.most().value(), within(1e-9));
    }

    @Test
    void the_table_has_a_row_for_each_gear_and_a_column_for_each_speed() {
        List<RoadSpeeds.Row> table = new RoadSpeeds(SampleTrucks.splitHigh().build()).table(List.of(1000.0, 2000.0));

        assertThat(table).hasSize(15);
        assertThat(table)
                .allSatisfy(row -> assertThat(row.atEngineSpeeds().get(1).value())
                        .isCloseTo(2 * row.atEngineSpeeds().get(0).value(), within(1e-9)));
    }

    @Provide
    Arbitrary<TruckProfile> trucks() {
        return SampleTrucks.byTheRule();
    }

    @Property
    void a_higher_axle_ratio_lowers_every_road_speed(
            @ForAll("trucks") TruckProfile truck, @ForAll @DoubleRange(min = 1.01, max = 2) double factor) {
        TruckDraft other = TruckDraft.named("other")
                .mainRatios(truck.mainRatios())
                .set(Parameter.RANGE_RATIO, truck.rangeRatio())
                .set(Parameter.AXLE_RATIO, truck.value(Parameter.AXLE_RATIO) * factor)
                .set(Parameter.TYRE_REVS, truck.value(Parameter.TYRE_REVS))
                .set(Parameter.GOVERNED_RPM, truck.value(Parameter.GOVERNED_RPM));
        truck.splitter().ifPresent(s -> other.splitter(s.ratio(), s.bothRanges()));
        TruckProfile shorter = other.build();

        for (Gear gear : truck.gears().all()) {
            assertThat(new RoadSpeeds(shorter).roadSpeed(gear, 1500).value())
                    .isLessThan(new RoadSpeeds(truck).roadSpeed(gear, 1500).value());
        }
    }

    /** 1.609344 km/h a mile an hour; a limit is rounded down, and below 2 to a tenth; by hand. */
    @ParameterizedTest
    @CsvSource({
        "27.07, 27 km/h (16 mph), 27 km/h (17 mph)",
        "27.99, 27 km/h (17 mph), 28 km/h (17 mph)",
        "32.18688, 32 km/h (20 mph), 32 km/h (20 mph)",
        "3.2, 3 km/h (1.9 mph), 3 km/h (2.0 mph)",
        "1.39, 1.3 km/h (0.8 mph), 1.4 km/h (0.9 mph)",
        "0.04, 0.0 km/h (0.0 mph), 0.0 km/h (0.0 mph)"
    })
    void a_limit_is_rounded_down_and_a_crawl_is_told_to_a_tenth(double kmh, String limit, String whole) {
        Figure speed = Figure.computed(kmh, Unit.KILOMETRE_PER_HOUR, "");

        assertThat(SpeedUnits.BOTH.limit(speed)).isEqualTo(limit);
        assertThat(SpeedUnits.BOTH.whole(speed)).isEqualTo(whole);
    }
}
