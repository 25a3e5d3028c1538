package witnessmark.gearbox.shift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;

/** Axle 3.5, 312 turns a km, governed 2000 and idle 600 rpm, front ratios 2.744, 1.96, 1.4, 1, splitter 0.85. */
class InRangeShiftTest {
    private static final TruckProfile TRUCK = SampleTrucks.splitHigh().build();

    private static Gear gear(String name) {
        return TRUCK.gears().named(name);
    }

    private static InRangeShift shift(String from, String to, double kmh) {
        return InRangeShift.of(TRUCK, gear(from), gear(to), kmh, Clutch.ENGAGED);
    }

    /** 60 km/h turn the output at 312 x 3.5 = 1092 rpm; times 1.96 and 2.744, the latter over 2000: by hand. */
    @Test
    void a_downshift_too_fast_drives_the_engine_far_above_governed_speed() {
        InRangeShift shift = shift("6d", "5d", 60);

        assertThat(shift.engineBefore().value()).isCloseTo(2140.32, within(1e-6));
        assertThat(shift.engineAfter().value()).isCloseTo(2996.448, within(1e-6));
        assertThat(shift.timesGoverned().value()).isCloseTo(1.498224, within(1e-9));
        assertThat(shift.ceiling().value()).isCloseTo(2000 / (2.744 * 3.5 * 312 / 60), within(1e-9));
        assertThat(shift.down()).isTrue();
        assertThat(shift.outcome()).isEqualTo(RangeShift.Outcome.ENGINE_OVERSPED);
        assertThat(shift.verdict()).isEqualTo(ShiftVerdict.DESTRUCTIVE);
        assertThat(InRangeShift.of(TRUCK, gear("6d"), gear("5d"), 60, Clutch.PEDAL_DOWN)
                        .outcome())
                .isEqualTo(RangeShift.Outcome.DISC_OVERSPED);
    }

    /** 30 km/h: 546 rpm of the output, 1070.16 of the engine in 6d. */
    @Test
    void an_upshift_within_bounds_is_proper_and_shows_four_figures() {
        InRangeShift shift = shift("5d", "6d", 30);

        assertThat(shift.engineAfter().value()).isCloseTo(1070.16, within(1e-6));
        assertThat(shift.down()).isFalse();
        assertThat(shift.verdict()).isEqualTo(ShiftVerdict.PROPER);
        assertThat(shift.figures().keySet())
                .containsExactly(
                        "engine speed before",
                        "engine speed after",
                        "engine speed after, over governed",
                        "highest road speed of gear 6d");
    }

    /** The mainshaft side of the splitter turns at 1092 rpm, its dogs part by 1 - 0.85 of it: by hand. */
    @Test
    void the_splitter_alone_shows_what_its_dogs_meet() {
        assertThat(shift("6d", "6o", 60)
                        .figures()
                        .get("speed difference at the splitter's dogs")
                        .value())
                .isCloseTo(163.8, within(1e-9));
    }

    /** In 8d the engine turns as the output does: 546 rpm, below idle. An engine that labours so is hard on gears: judgement. */
    @Test
    void below_idle_an_engine_that_is_let_in_labours_and_a_disc_alone_does_not() {
        assertThat(shift("5d", "8d", 30).outcome()).isEqualTo(RangeShift.Outcome.BELOW_IDLE);
        assertThat(shift("5d", "8d", 30).verdict()).isEqualTo(ShiftVerdict.HARD);

        InRangeShift pressed = InRangeShift.of(TRUCK, gear("5d"), gear("8d"), 30, Clutch.PEDAL_DOWN);
        assertThat(pressed.outcome()).isEqualTo(RangeShift.Outcome.DISC_BELOW_IDLE);
        assertThat(pressed.verdict()).isEqualTo(ShiftVerdict.PROPER);
    }

    @Test
    void from_a_standstill_to_the_fastest_that_can_be_said() {
        assertThat(shift("5d", "6d", 0).outcome()).isEqualTo(RangeShift.Outcome.STANDING);
        assertThat(shift("5d", "6d", 200).roadSpeed().value()).isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 200.1, Double.NaN})
    void a_road_speed_that_cannot_be_is_refused(double kmh) {
        assertThatThrownBy(() -> shift("5d", "6d", kmh))
                .hasMessage("road speed: " + kmh + " km/h cannot be; give 0 to 200");
    }

    @ParameterizedTest
    @CsvSource({"5d, 5d", "5d, 4"})
    void no_shift_or_one_of_the_range_is_refused(String from, String to) {
        assertThatThrownBy(() -> shift(from, to, 30)).hasMessageContaining("not a shift under way within one range");
    }

    @ParameterizedTest
    @CsvSource({"Rl, 1", "1, Rl"})
    void reverse_is_for_a_standstill(String from, String to) {
        assertThatThrownBy(() -> shift(from, to, 3)).hasMessageContaining("is done at a standstill");
    }

    /** The bounds belong to the better word: judgement. */
    @Test
    void a_figure_just_at_its_bound_is_not_beyond_it() {
        assertThat(ShiftVerdict.ofEnergy(1.05)).isEqualTo(ShiftVerdict.PROPER);
        assertThat(ShiftVerdict.ofEnergy(3)).isEqualTo(ShiftVerdict.HARD);
        assertThat(ShiftVerdict.ofSpeed(1.01)).isEqualTo(ShiftVerdict.PROPER);
        assertThat(ShiftVerdict.ofSpeed(1.25)).isEqualTo(ShiftVerdict.HARD);
    }

    @Test
    void a_range_shift_that_moves_the_splitter_shows_its_dogs_and_both_orders() {
        RangeShift shift = new AnalyseRangeShift(TRUCK).of(RangeShiftQuestion.proper(gear("5o"), gear("4"), 20));

        assertThat(shift.figures())
                .containsKeys(
                        "of it by the splitter's dogs", "slip energy, splitter first", "slip energy, range first");
    }

    @Test
    void words_are_said_of_every_verdict_outcome_and_reason() {
        assertThat(ShiftVerdict.values())
                .extracting(ShiftVerdict::words)
                .doesNotHaveDuplicates()
                .doesNotContain("");
        assertThat(RangeShift.Outcome.values())
                .extracting(RangeShift.Outcome::words)
                .doesNotHaveDuplicates()
                .doesNotContain("");
        assertThat(Reason.values())
                .extracting(Reason::words)
                .doesNotHaveDuplicates()
                .doesNotContain("");
    }
}
