package witnessmark.gearbox.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.gearbox.Gears;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.TruckProfile;
import witnessmark.truck.ReadyTrucks;

class StepsTest {

    /** Geometric layout of stepped transmissions (a public university lecture shows it); drops recomputed. */
    @ParameterizedTest
    @CsvSource({
        "12, 11.0, 0.78, 1.271983987, 21.38265807, 1415.112155",
        "10, 10.5, 1.0, 1.298570336, 22.99223441, 1386.139781"
    })
    void geometric_ratios_give_the_same_drop_in_every_gear(
            int count, double first, double last, double step, double dropPercent, double from1800) {
        TruckProfile truck = TruckDraft.named("geometric")
                .mainRatios(IntStream.range(0, count)
                        .mapToObj(i -> last * Math.pow(first / last, (count - 1.0 - i) / (count - 1)))
                        .toList())
                .set(Parameter.AXLE_RATIO, 3.5)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2000)
                .build();

        List<ShiftStep> steps = Steps.of(truck).inOrder();

        assertThat(steps).hasSize(count - 1).allSatisfy(shift -> {
            assertThat(shift.step().value()).isCloseTo(step, within(step * 1e-8));
            assertThat(100 * shift.dropShare()).isCloseTo(dropPercent, within(dropPercent * 1e-8));
            assertThat(shift.rpmAfter(1800).value()).isCloseTo(from1800, within(from1800 * 1e-8));
        });
    }

    /** Range and splitter box with equal steps: splitter s, main step s^2, range s^8, overall s^15; recomputed. */
    @Test
    void sixteen_equal_half_steps() {
        double s = 1.18;
        TruckProfile truck = TruckDraft.named("sixteen")
                .mainRatios(List.of(Math.pow(s, 6), Math.pow(s, 4), Math.pow(s, 2), 1.0))
                .set(Parameter.RANGE_RATIO, Math.pow(s, 8))
                .splitter(s, true)
                .set(Parameter.AXLE_RATIO, 3.5)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2000)
                .build();
        Gears gears = truck.gears();

        Steps steps = Steps.of(truck);

        assertThat(truck.rangeRatio()).isCloseTo(3.758859203, within(1e-8));
        assertThat(gears.forward().get(0).ratio() / gears.top().ratio()).isCloseTo(11.97374789, within(1e-7));
        assertThat(steps.inOrder())
                .hasSize(15)
                .allSatisfy(shift -> assertThat(shift.drop(100).value()).isCloseTo(15.25423729, within(1e-7)));
        assertThat(steps.byLever())
                .allSatisfy(shift -> assertThat(shift.drop(100).value()).isCloseTo(28.18155702, within(1e-7)));
    }

    /** Matching speed n_new = n i_new / i_old, recomputed. */
    @Test
    void engine_speed_after_a_shift_follows_the_ratios() {
        TruckProfile truck = TruckDraft.named("two")
                .mainRatios(List.of(6.5, 4.8))
                .set(Parameter.AXLE_RATIO, 3.5)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2000)
                .build();

        assertThat(Steps.of(truck).inOrder().get(0).rpmAfter(1600).value()).isCloseTo(1181.538462, within(1e-6));
    }

    /** Twelve ratios from 11.0 to 0.78 in even steps, to four places: recomputed. */
    @Test
    void twelve_even_ratios_are_those_of_the_list() {
        List<Double> list =
                List.of(11.0, 8.6479, 6.7988, 5.3450, 4.2021, 3.3036, 2.5972, 2.0418, 1.6052, 1.2620, 0.9921, 0.7800);
        TruckProfile truck = TruckDraft.named("twelve")
                .mainRatios(list)
                .set(Parameter.AXLE_RATIO, 3.5)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2000)
                .build();

        Steps.Evenness even = Steps.of(truck).highRangeEvenness().orElseThrow();

        assertThat(even.verdict()).isEqualTo(Steps.Evenness.Verdict.EQUAL);
        assertThat(100 * even.least()).isCloseTo(21.38265807, within(0.01));
        assertThat(100 * even.most()).isCloseTo(21.38265807, within(0.01));
    }

    @Test
    void each_step_says_what_moves() {
        List<ShiftStep> steps = Steps.of(SampleTrucks.splitHigh().build()).inOrder();

        assertThat(steps)
                .extracting(ShiftStep::kind)
                .containsExactly(
                        ShiftStep.Kind.LEVER,
                        ShiftStep.Kind.LEVER,
                        ShiftStep.Kind.LEVER,
                        ShiftStep.Kind.LEVER_AND_RANGE,
                        ShiftStep.Kind.SPLIT,
                        ShiftStep.Kind.LEVER_AND_SPLIT,
                        ShiftStep.Kind.SPLIT,
                        ShiftStep.Kind.LEVER_AND_SPLIT,
                        ShiftStep.Kind.SPLIT,
                        ShiftStep.Kind.LEVER_AND_SPLIT,
                        ShiftStep.Kind.SPLIT);
    }

    /** Common practice, no source: one rpm drop serves all of high range. */
    @ParameterizedTest
    @ValueSource(strings = {"nine-ratio", "ten-ratio", "thirteen-ratio", "eighteen-ratio"})
    void high_range_drops_are_equal_within_rounding(String name) {
        assertThat(Steps.of(ReadyTrucks.named(name)).highRangeEvenness())
                .hasValueSatisfying(even -> assertThat(even.verdict()).isEqualTo(Steps.Evenness.Verdict.EQUAL));
    }

    @Test
    void uneven_high_range_steps_are_called_so() {
        TruckProfile truck =
                SampleTrucks.splitHigh().mainRatios(List.of(3.0, 1.7, 1.3, 1.0)).build();

        assertThat(Steps.of(truck).highRangeEvenness())
                .hasValueSatisfying(even -> assertThat(even.verdict()).isEqualTo(Steps.Evenness.Verdict.UNEVEN));
    }

    /** Judgement: the smallest drop within 5 % of the largest is equal, within 20 % nearly; largest 0.3 here. */
    @ParameterizedTest
    @CsvSource({"0.2851, EQUAL", "0.2849, NEARLY_EQUAL", "0.2401, NEARLY_EQUAL", "0.2399, UNEVEN"})
    void evenness_at_its_bounds(double leastDrop, Steps.Evenness.Verdict verdict) {
        double wide = 1 / (1 - 0.3);
        double narrow = 1 / (1 - leastDrop);
        TruckProfile truck = SampleTrucks.splitHigh()
                .mainRatios(List.of(wide * narrow, narrow, 1.0))
                .build();

        assertThat(Steps.of(truck).highRangeEvenness())
                .hasValueSatisfying(even -> assertThat(even.verdict()).isEqualTo(verdict));
    }

    @Test
    void a_downshift_is_no_step() {
        Gears gears = SampleTrucks.splitHigh().build().gears();

        assertThatThrownBy(() -> new ShiftStep(gears.named("4"), gears.named("3")))
                .hasMessage("shift: 4 to 3 is not an upshift between forward gears; give the slower gear first");
    }

    @Provide
    Arbitrary<TruckProfile> trucks() {
        return SampleTrucks.byTheRule();
    }

    @Property
    void equal_steps_give_equal_drops(@ForAll("trucks") TruckProfile truck) {
        Steps steps = Steps.of(truck);
        double main = truck.mainRatios().get(0) / truck.mainRatios().get(1);

        assertThat(steps.byLever().stream().filter(s -> s.from().range() == Range.HIGH))
                .allSatisfy(step -> assertThat(step.dropShare()).isCloseTo(1 - 1 / main, within(1e-9)));
        assertThat(steps.inOrder().stream().filter(s -> s.kind() == ShiftStep.Kind.SPLIT))
                .allSatisfy(step -> assertThat(step.dropShare()).isCloseTo(1 - 1 / Math.sqrt(main), within(1e-9)));
    }
}
