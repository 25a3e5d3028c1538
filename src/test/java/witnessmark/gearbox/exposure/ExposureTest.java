package witnessmark.gearbox.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.evidence.RollingEvidence;

class ExposureTest {

    private static final TruckProfile TRUCK = TruckDraft.named("sample")
            .mainRatios(List.of(3.5, 2.2, 1.38, 1.0))
            .set(Parameter.RANGE_RATIO, 4)
            .set(Parameter.REVERSE_RATIO, 3.8)
            .set(Parameter.AXLE_RATIO, 3.7)
            .set(Parameter.TYRE_REVS, 300)
            .set(Parameter.GOVERNED_RPM, 2000)
            .set(Parameter.GEAR_BORE, 70)
            .build();
    /** 100 km/h turn the output at 100 / 60 x 300 x 3.7 = 1850 rpm. */
    private static final Journey HOUR = new Journey(100, 1);

    private static Exposure.Rub rub(Exposure exposure, String lever) {
        return exposure.gears().stream()
                .filter(rub -> rub.lever().name().equals(lever))
                .findFirst()
                .orElseThrow();
    }

    /** Mainshaft 1850 rpm, idle 600: a coast rubs 0.77, 0.91 and, on reverse, 1.09 of a tow; recomputed. */
    @ParameterizedTest
    @CsvSource({"3, 0.765", "1, 0.907", "R, 1.085"})
    void a_coast_rubs_a_little_less_than_a_tow_and_more_on_reverse(String lever, double share) {
        Exposure coast = Exposure.of(TRUCK, Exposure.Mode.COAST, Range.HIGH, HOUR);
        Exposure tow = Exposure.of(TRUCK, Exposure.Mode.TOW, Range.HIGH, HOUR);

        assertThat(coast.mainshaft().value()).isCloseTo(1850, within(1e-9));
        assertThat(rub(coast, lever).distance().value()
                        / rub(tow, lever).distance().value())
                .isCloseTo(share, within(5e-4));
    }

    /** pi x 0.070 m x 1850 / 60 = 6.781 m/s; an hour makes 24.41 km: by hand. */
    @Test
    void in_a_tow_every_gear_rubs_at_mainshaft_speed() {
        Exposure tow = Exposure.of(TRUCK, Exposure.Mode.TOW, Range.HIGH, HOUR);

        assertThat(tow.gears()).hasSize(5).allSatisfy(rub -> {
            assertThat(rub.difference().value()).isCloseTo(1850, within(1e-9));
            assertThat(rub.speed().value()).isCloseTo(6.7806, within(1e-4));
            assertThat(rub.distance().value()).isCloseTo(24.410, within(1e-3));
        });
        assertThat(tow.oilThrow()).isEqualTo(Exposure.OilThrow.NONE_IN_FRONT);
    }

    @Test
    void low_range_left_in_multiplies_a_tow_by_the_range_ratio() {
        double high = Exposure.of(TRUCK, Exposure.Mode.TOW, Range.HIGH, HOUR)
                .worst()
                .distance()
                .value();
        double low = Exposure.of(TRUCK, Exposure.Mode.TOW, Range.LOW, HOUR)
                .worst()
                .distance()
                .value();

        assertThat(low / high).isCloseTo(4, within(1e-9));
    }

    /**
     * Governed 2000 rpm over a fastest front ratio of 1: 2000 rpm is the most in ordinary driving, 18.5 rpm of the output to
     * one km/h. Bounds of a shift (judgement): 1.01 and 1.25 of it. In low range, ratio 4, a quarter of the road speed does.
     */
    @ParameterizedTest
    @CsvSource({
        "HIGH, 109.18, ORDINARY",
        "HIGH, 109.20, ABOVE_ORDINARY",
        "HIGH, 135.12, ABOVE_ORDINARY",
        "HIGH, 135.15, DESTRUCTIVE",
        "LOW, 27.29, ORDINARY",
        "LOW, 27.31, ABOVE_ORDINARY",
        "LOW, 33.79, DESTRUCTIVE",
        "LOW, 90, DESTRUCTIVE"
    })
    void the_speed_of_the_mainshaft_is_judged_by_itself(Range range, double kmh, Exposure.ShaftSpeed speed) {
        Exposure tow = Exposure.of(TRUCK, Exposure.Mode.TOW, range, new Journey(kmh, 0.01));

        assertThat(tow.shaft()).isEqualTo(speed);
    }

    /** 90 km/h in low range: 90 / 60 x 300 x 3.7 x 4 = 6660 rpm, 3.33 times 2000; by hand. */
    @Test
    void a_tow_in_low_range_says_that_speed_alone_destroys() {
        Exposure tow = Exposure.of(TRUCK, Exposure.Mode.TOW, Range.LOW, new Journey(90, 0.01));

        assertThat(tow.mainshaft().value()).isCloseTo(6660, within(1e-9));
        assertThat(tow.timesOrdinary().value()).isCloseTo(3.33, within(1e-9));
        assertThat(RollingEvidence.of(TRUCK, tow).summary()).contains("the speed alone destroys");
    }

    @Test
    void coasting_reverse_rubs_most_and_oil_is_thrown_as_at_idle() {
        Exposure coast = Exposure.of(TRUCK, Exposure.Mode.COAST, Range.HIGH, HOUR);

        assertThat(coast.worst().lever().name()).isEqualTo("R");
        assertThat(coast.oilThrow()).isEqualTo(Exposure.OilThrow.OF_IDLE);
        assertThat(rub(coast, "R").gearSpeed().value()).isNegative();
        assertThat(rub(coast, "4").onPocketBearing()).isTrue();
        assertThat(rub(coast, "3").onPocketBearing()).isFalse();
    }

    /** An hour makes 24.41 km (above), half of it half: by hand. */
    @Test
    void half_the_time_rubs_half_the_way() {
        Exposure tow = Exposure.of(TRUCK, Exposure.Mode.TOW, Range.HIGH, new Journey(100, 0.5));

        assertThat(tow.worst().distance().value()).isCloseTo(12.205, within(1e-3));
    }

    /** Fastest front ratio 0.7, governed 2000 rpm: the engine turns the mainshaft at 2857 rpm at most; 1850 of it by hand. */
    @Test
    void an_overdrive_gear_in_front_makes_more_speed_ordinary() {
        TruckProfile overdrive = TruckDraft.named("overdrive")
                .mainRatios(List.of(3.5, 2.2, 1.0, 0.7))
                .set(Parameter.AXLE_RATIO, 3.7)
                .set(Parameter.TYRE_REVS, 300)
                .set(Parameter.GOVERNED_RPM, 2000)
                .build();

        Exposure tow = Exposure.of(overdrive, Exposure.Mode.TOW, Range.HIGH, HOUR);

        assertThat(tow.timesOrdinary().value()).isCloseTo(1850 * 0.7 / 2000, within(1e-9));
        assertThat(symbol(ExposureSymbols.of(overdrive, tow), "i_fastest")).isEqualTo(0.7);
    }

    /** Idle 600 rpm over 3.8, against the shaft: 1850 + 157.9 rpm; by hand. */
    @Test
    void the_figures_are_those_of_the_shaft_and_of_the_worst_gear() {
        Exposure coast = Exposure.of(TRUCK, Exposure.Mode.COAST, Range.HIGH, HOUR);

        assertThat(coast.figures().keySet())
                .containsExactly(
                        "mainshaft speed",
                        "over the most in ordinary driving",
                        "speed of the worst gear",
                        "against the shaft",
                        "rubbing speed",
                        "sliding distance");
        assertThat(coast.figures().get("speed of the worst gear").value()).isCloseTo(-157.8947, within(1e-4));
        assertThat(coast.figures().get("against the shaft").value()).isCloseTo(2007.8947, within(1e-4));
    }

    @Test
    void each_gear_says_how_its_own_speed_comes_about() {
        Exposure coast = Exposure.of(TRUCK, Exposure.Mode.COAST, Range.HIGH, HOUR);
        Exposure tow = Exposure.of(TRUCK, Exposure.Mode.TOW, Range.HIGH, HOUR);

        assertThat(rub(coast, "R").gearSpeed().note()).contains("reverse turns backwards");
        assertThat(rub(coast, "2").gearSpeed().note()).isEqualTo("n_gear = n_idle / i_lever");
        assertThat(rub(tow, "R").gearSpeed().note()).contains("the engine is off");
        assertThat(tow.oilThrow().words()).startsWith("no oil is thrown in the front section");
        assertThat(coast.oilThrow().words()).contains("as at idle");
    }

    @Test
    void a_standing_reverse_gear_turns_at_nought_and_not_at_minus_nought() {
        Exposure tow = Exposure.of(TRUCK, Exposure.Mode.TOW, Range.HIGH, HOUR);

        assertThat(Double.compare(rub(tow, "R").gearSpeed().value(), 0.0)).isZero();
    }

    @Test
    void the_letters_stand_for_what_was_asked() {
        Exposure low = Exposure.of(TRUCK, Exposure.Mode.COAST, Range.LOW, new Journey(80, 0.5));
        Exposure high = Exposure.of(TRUCK, Exposure.Mode.COAST, Range.HIGH, new Journey(80, 0.5));

        assertThat(symbol(ExposureSymbols.of(TRUCK, low), "time")).isEqualTo(30);
        assertThat(symbol(ExposureSymbols.of(TRUCK, low), "r_range")).isEqualTo(4);
        assertThat(symbol(ExposureSymbols.of(TRUCK, high), "r_range")).isEqualTo(1);
        assertThat(symbol(ExposureSymbols.of(TRUCK, low), "i_lever")).isEqualTo(3.8);
    }

    private static double symbol(List<Symbol> symbols, String letter) {
        return symbols.stream()
                .filter(symbol -> symbol.symbol().equals(letter))
                .findFirst()
                .orElseThrow()
                .figure()
                .value();
    }

    @Test
    void distance_and_time_say_the_same() {
        assertThat(Journey.overDistance(80, 40)).isEqualTo(Journey.overMinutes(80, 30));
        assertThat(new Journey(80, 0.5).km()).isEqualTo(40);
    }

    @Test
    void nonsense_is_refused() {
        assertThatThrownBy(() -> new Journey(0, 1)).hasMessage("road speed: 0.0 km/h cannot be; give above 0 to 200");
        assertThatThrownBy(() -> Journey.overMinutes(80, -5)).hasMessageStartingWith("duration: -0.08");
        assertThatThrownBy(() -> Exposure.of(
                        TruckDraft.named("two")
                                .mainRatios(List.of(2.0, 1.0))
                                .set(Parameter.AXLE_RATIO, 4)
                                .set(Parameter.TYRE_REVS, 312)
                                .set(Parameter.GOVERNED_RPM, 2000)
                                .build(),
                        Exposure.Mode.TOW,
                        Range.LOW,
                        HOUR))
                .hasMessage("range: truck two has no low range; give high");
        assertThat(Exposure.of(SampleTrucks.splitBoth().build(), Exposure.Mode.TOW, Range.LOW, HOUR)
                        .gears())
                .hasSize(6);
    }
}
