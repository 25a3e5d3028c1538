package witnessmark.gearbox.shift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.Split;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;
import witnessmark.gearbox.shift.RangeShiftQuestion.Rolling;
import witnessmark.gearbox.shift.RangeShiftQuestion.SplitterMove;

class AnalyseRangeShiftTest {

    private static final TruckProfile TRUCK = SampleTrucks.splitHigh()
            .set(Parameter.MAINSHAFT_INERTIA, 0.05)
            .set(Parameter.AUXILIARY_INERTIA, 0.07)
            .set(Parameter.INPUT_INERTIA, 0.3)
            .set(Parameter.ENGINE_INERTIA, 3)
            .set(Parameter.DRAG, 0)
            .build();
    private static final double CEILING = 2000 * 60 / (3.4 * 3.5 * 312);

    private static Gear gear(String name) {
        return TRUCK.gears().named(name);
    }

    private static RangeShift shift(
            String from, String to, double kmh, Clutch clutch, LeverTiming lever, Rolling rolling) {
        return new AnalyseRangeShift(TRUCK)
                .of(new RangeShiftQuestion(
                        gear(from), gear(to), kmh, clutch, lever, rolling, SplitterMove.AS_THE_GEARS_SAY));
    }

    private static RangeShift proper(String from, String to, double kmh) {
        return new AnalyseRangeShift(TRUCK).of(RangeShiftQuestion.proper(gear(from), gear(to), kmh));
    }

    /** Worked by hand: output 2000/3.4 rpm, mainshaft change 2000 (1 - 1/3.4), W = 1/2 0.12 (change)^2. */
    @Test
    void a_downshift_at_its_ceiling_is_proper() {
        RangeShift shift = proper("5d", "4", CEILING);

        assertThat(shift.verdict()).isEqualTo(ShiftVerdict.PROPER);
        assertThat(shift.reasons()).isEmpty();
        assertThat(shift.properCeiling().value()).isCloseTo(CEILING, within(1e-9));
        assertThat(shift.engine().inputAfter().value()).isCloseTo(2000, within(1e-6));
        assertThat(shift.engine().outcome()).isEqualTo(RangeShift.Outcome.WITHIN_GOVERNED);
        assertThat(shift.cone().mainshaftChange().value()).isCloseTo(1411.764705882, within(1e-6));
        assertThat(shift.cone().slipSpeed().value()).isCloseTo(415.224913495, within(1e-6));
        assertThat(shift.cone().slipEnergy().value()).isCloseTo(1.311393803, within(1e-6));
        assertThat(shift.cone().timesSameShiftProper().value()).isCloseTo(1, within(1e-12));
    }

    /** At the low cone the slip is R times slower and the inertia R squared greater: t = J R w(R-1) / T. */
    @Test
    void the_time_counts_at_the_cone_that_works() {
        double torque = ConeClutch.of(TRUCK).torque().value();
        double change = Slip.radPerSecond(1411.764705882);

        assertThat(proper("5d", "4", CEILING).cone().time().orElseThrow().value())
                .isCloseTo(0.12 * 3.4 * change / torque, within(1e-9));
        assertThat(proper("4", "5d", CEILING).cone().time().orElseThrow().value())
                .isCloseTo(0.12 * change / torque, within(1e-9));
    }

    @Test
    void up_and_down_at_one_road_speed_cost_the_same_energy() {
        assertThat(proper("4", "5d", 25).cone().slipEnergy().value())
                .isCloseTo(proper("5d", "4", 25).cone().slipEnergy().value(), within(1e-12));
    }

    @Test
    void at_1_6_times_the_ceiling_the_engine_would_reach_1_6_times_governed() {
        RangeShift engaged = proper("5d", "4", 1.6 * CEILING);
        RangeShift pedalDown =
                shift("5d", "4", 1.6 * CEILING, Clutch.PEDAL_DOWN, LeverTiming.PRESELECTED, Rolling.FORWARD);
        RangeShift neutral = shift("5d", "4", 1.6 * CEILING, Clutch.ENGAGED, LeverTiming.IN_NEUTRAL, Rolling.FORWARD);

        assertThat(engaged.engine().timesGoverned().value()).isCloseTo(1.6, within(1e-9));
        assertThat(engaged.cone().timesSameShiftProper().value()).isCloseTo(2.56, within(1e-9));
        assertThat(engaged.verdict()).isEqualTo(ShiftVerdict.DESTRUCTIVE);
        assertThat(engaged.engine().outcome()).isEqualTo(RangeShift.Outcome.ENGINE_OVERSPED);
        assertThat(pedalDown.engine().outcome()).isEqualTo(RangeShift.Outcome.DISC_OVERSPED);
        assertThat(neutral.engine().outcome()).isEqualTo(RangeShift.Outcome.INPUT_WOULD_BE_OVERSPED);
    }

    private static RangeShift split(String from, String to, double kmh, SplitterMove order) {
        return new AnalyseRangeShift(TRUCK)
                .of(new RangeShiftQuestion(
                        gear(from), gear(to), kmh, Clutch.ENGAGED, LeverTiming.PRESELECTED, Rolling.FORWARD, order));
    }

    /**
     * Mainshaft 0.05, auxiliary 0.07 kg m2, range 3.4, overdrive 0.85, derived: the cone turns the auxiliary by the range
     * step in any order. Splitter home first it drags the mainshaft whole, range first through the split: 0.07 + 0.85^2
     * x 0.05 = 0.106125 in place of 0.12, so 0.884375 of the energy. The dogs take 0.15 before, or 3.4 x 0.15 after.
     */
    @Test
    void splitter_and_range_together_cost_by_which_moves_first() {
        double output = 25 / 60.0 * 312 * 3.5;
        RangeShift direct = proper("5d", "4", 25);
        RangeShift splitterFirst = split("5o", "4", 25, SplitterMove.SPLITTER_FIRST);
        RangeShift rangeFirst = split("5o", "4", 25, SplitterMove.RANGE_FIRST);

        assertThat(energy(splitterFirst)).isCloseTo(energy(direct), within(1e-12));
        assertThat(energy(rangeFirst)).isCloseTo(0.884375 * energy(direct), within(1e-12));
        assertThat(splitterFirst.cone().dogChange().orElseThrow().value()).isCloseTo(0.15 * output, within(1e-9));
        assertThat(rangeFirst.cone().dogChange().orElseThrow().value()).isCloseTo(0.51 * output, within(1e-9));
        assertThat(rangeFirst.cone().mainshaftChange().value()).isCloseTo(2.55 * output, within(1e-9));
        assertThat(direct.cone().dogChange()).isEmpty();
        assertThat(direct.cone().orders()).isEmpty();
    }

    @Test
    void where_the_order_is_not_said_the_costlier_one_counts_and_both_are_told() {
        RangeShift down = proper("5o", "4", 25);
        RangeShift up = proper("4", "5o", 25);

        assertThat(energy(down)).isEqualTo(energy(split("5o", "4", 25, SplitterMove.SPLITTER_FIRST)));
        assertThat(energy(up)).isEqualTo(energy(split("4", "5o", 25, SplitterMove.RANGE_FIRST)));
        assertThat(down.cone().orders()).hasValueSatisfying(orders -> {
            assertThat(orders.counted()).isEqualTo(SplitterMove.SPLITTER_FIRST);
            assertThat(orders.splitterFirst().value()).isEqualTo(energy(down));
            assertThat(orders.rangeFirst().value()).isEqualTo(energy(split("5o", "4", 25, SplitterMove.RANGE_FIRST)));
        });
        assertThat(up.cone().orders().orElseThrow().counted()).isEqualTo(SplitterMove.RANGE_FIRST);
    }

    private static double energy(RangeShift shift) {
        return shift.cone().slipEnergy().value();
    }

    /** At the same engine speed before, the road is 1/0.85 faster: 1/0.85^2 = 1.384 times the energy; recomputed. */
    @Test
    void overdrive_to_low_at_one_engine_speed_costs_more() {
        assertThat(energy(proper("5o", "4", 25 / 0.85)) / energy(proper("5d", "4", 25)))
                .isCloseTo(1.384083045, within(1e-9));
    }

    @Test
    void a_splitter_that_stays_split_lets_the_cone_slip_less() {
        RangeShift stays = new AnalyseRangeShift(TRUCK)
                .of(new RangeShiftQuestion(
                        gear("5o"),
                        gear("4"),
                        25,
                        Clutch.ENGAGED,
                        LeverTiming.PRESELECTED,
                        Rolling.FORWARD,
                        SplitterMove.STAYS_SPLIT));

        assertThat(ratio(
                        stays.cone().mainshaftChange().value(),
                        proper("5d", "4", 25).cone().mainshaftChange().value()))
                .isCloseTo(0.85, within(1e-9));
        assertThat(ratio(
                        stays.engine().inputAfter().value(),
                        proper("5d", "4", 25).engine().inputAfter().value()))
                .isCloseTo(0.85, within(1e-9));
    }

    /** J = 0.12; plus 0.3 x 1^2; plus 3 x 1^2: by hand. In gear 3 the front counts 1.4 squared. */
    @Test
    void the_lever_home_first_makes_the_cone_drag_the_front() {
        RangeShift proper = proper("5d", "4", 25);
        RangeShift down = shift("5d", "4", 25, Clutch.PEDAL_DOWN, LeverTiming.LEVER_HOME_FIRST, Rolling.FORWARD);
        RangeShift engaged = shift("5d", "4", 25, Clutch.ENGAGED, LeverTiming.LEVER_HOME_FIRST, Rolling.FORWARD);
        RangeShift third = shift("5d", "3", 15, Clutch.ENGAGED, LeverTiming.LEVER_HOME_FIRST, Rolling.FORWARD);

        // At the low cone, behind the range ratio: times 3.4 squared.
        assertThat(proper.cone().inertia().value()).isCloseTo(0.12 * 11.56, within(1e-9));
        assertThat(down.cone().inertia().value()).isCloseTo(0.42 * 11.56, within(1e-9));
        assertThat(engaged.cone().inertia().value()).isCloseTo(3.42 * 11.56, within(1e-9));
        assertThat(third.cone().inertia().value()).isCloseTo((0.12 + 3.3 * 1.96) * 11.56, within(1e-9));
        assertThat(engaged.cone().slipEnergy().value())
                .isCloseTo(28.5 * proper.cone().slipEnergy().value(), within(1e-9));
        assertThat(engaged.verdict()).isEqualTo(ShiftVerdict.DESTRUCTIVE);
        assertThat(engaged.reasons()).contains(Reason.LEVER_HOME_FIRST);
    }

    /** Lever home and the input turning, rolling back: output speed x R, plus idle over the main ratio; by hand. */
    @Test
    void with_the_lever_home_the_speeds_add_at_the_cone() {
        double output = 5 / 60.0 * 312 * 3.5;

        RangeShift shift = shift("5d", "1", 5, Clutch.ENGAGED, LeverTiming.LEVER_HOME_FIRST, Rolling.BACK);

        assertThat(shift.cone().mainshaftChange().value()).isCloseTo(output * 3.4 + 600 / 2.744, within(1e-9));
        assertThat(shift.cone().slipSpeed().value()).isCloseTo(output + 600 / 2.744 / 3.4, within(1e-9));
        assertThat(shift.engine().inputAfter().value()).isCloseTo(-output * 3.4 * 2.744, within(1e-9));
        assertThat(shift.engine().outcome()).isEqualTo(RangeShift.Outcome.TURNED_BACKWARDS);
        assertThat(shift.reasons()).contains(Reason.SPEEDS_ADD);
        assertThat(shift.verdict()).isNotEqualTo(ShiftVerdict.PROPER);
    }

    /** In neutral the mainshaft turns with the output already, so that the cone's work is that of going forward. */
    @Test
    void with_the_lever_in_neutral_the_cone_works_as_going_forward_but_the_shift_is_never_proper() {
        for (LeverTiming lever : List.of(LeverTiming.PRESELECTED, LeverTiming.IN_NEUTRAL)) {
            RangeShift back = shift("5d", "1", 5, Clutch.ENGAGED, lever, Rolling.BACK);
            RangeShift forward = shift("5d", "1", 5, Clutch.ENGAGED, lever, Rolling.FORWARD);

            assertThat(energy(back)).isEqualTo(energy(forward));
            assertThat(back.reasons()).containsExactly(Reason.ROLLING_AGAINST);
            assertThat(back.verdict()).isEqualTo(ShiftVerdict.HARD);
            assertThat(forward.verdict()).isEqualTo(ShiftVerdict.PROPER);
        }
        assertThat(shift("5d", "1", 5, Clutch.ENGAGED, LeverTiming.IN_NEUTRAL, Rolling.BACK)
                        .engine()
                        .outcome())
                .isEqualTo(RangeShift.Outcome.INPUT_WOULD_TURN_BACKWARDS);
    }

    @Test
    void out_of_reverse_the_truck_rolls_back_whatever_is_said() {
        RangeShift shift = proper("Rl", "6d", 3);

        assertThat(shift.question().rolling()).isEqualTo(Rolling.BACK);
        assertThat(shift.engine().inputAfter().value()).isNegative();
        assertThat(shift.engine().outcome()).isEqualTo(RangeShift.Outcome.TURNED_BACKWARDS);
        assertThat(shift.reasons()).containsExactly(Reason.ROLLING_AGAINST);
        assertThat(shift.verdict()).isEqualTo(ShiftVerdict.HARD);
        assertThat(proper("Rl", "Rhd", 3).reasons()).containsExactly(Reason.BELOW_IDLE, Reason.ROLLING_BACK);
    }

    @Test
    void rolling_back_into_reverse_adds_no_speeds_but_is_told_all_the_same() {
        RangeShift shift = shift("Rhd", "Rl", 3, Clutch.ENGAGED, LeverTiming.PRESELECTED, Rolling.FORWARD);

        assertThat(shift.engine().inputAfter().value()).isPositive();
        // "Never move range rolling back: stop first": common practice, no source.
        assertThat(shift.reasons()).containsExactly(Reason.BELOW_IDLE, Reason.ROLLING_BACK);
        assertThat(shift.verdict()).isEqualTo(ShiftVerdict.HARD);
    }

    @Test
    void low_air_that_does_not_beat_the_drag_never_finishes() {
        TruckProfile weak = SampleTrucks.splitHigh()
                .set(Parameter.PISTON_FORCE, 100)
                .set(Parameter.DRAG, 20)
                .build();

        RangeShift shift = new AnalyseRangeShift(weak)
                .of(RangeShiftQuestion.proper(
                        weak.gears().named("5d"), weak.gears().named("4"), 20));

        assertThat(shift.cone().time()).isEmpty();
        assertThat(shift.reasons()).containsExactly(Reason.CONE_CANNOT_FINISH);
        assertThat(shift.verdict()).isEqualTo(ShiftVerdict.HARD);
    }

    /**
     * The bounds are judgement, in the spirit of common practice. Energy goes with road speed squared: 1.05 of the hardest
     * proper energy at sqrt(1.05) = 1.02470 times the ceiling, 3 times at 1.73205. In gear 6d, front ratio 1.96, the engine
     * stays between idle and governed speed all the while.
     */
    @ParameterizedTest
    @CsvSource({"1.0099, PROPER", "1.0246, PROPER", "1.0248, HARD", "1.7320, HARD", "1.7321, DESTRUCTIVE"})
    void an_upshift_is_judged_by_its_energy(double timesCeiling, ShiftVerdict verdict) {
        assertThat(proper("4", "6d", timesCeiling * CEILING).verdict()).isEqualTo(verdict);
    }

    /** Judgement: governed speed and 1 % for reading a dial; 1.25 of it, beyond which valves and discs give way. */
    @ParameterizedTest
    @CsvSource({"1.0099, PROPER", "1.0101, HARD", "1.2499, HARD", "1.2501, DESTRUCTIVE"})
    void a_downshift_is_judged_by_the_speed_of_the_input_too(double timesCeiling, ShiftVerdict verdict) {
        RangeShift shift = proper("5d", "4", timesCeiling * CEILING);

        assertThat(shift.verdict()).isEqualTo(verdict);
        assertThat(shift.reasons().contains(Reason.SPEED_ABOVE_GOVERNED)).isEqualTo(verdict != ShiftVerdict.PROPER);
    }

    /** Idle 600 rpm by default; at the ceiling the input turns at 2000. */
    @ParameterizedTest
    @CsvSource({"0.2999, BELOW_IDLE", "0.3001, WITHIN_GOVERNED", "1.0099, WITHIN_GOVERNED", "1.0101, ENGINE_OVERSPED"})
    void the_outcome_changes_at_idle_and_at_governed_speed(double timesCeiling, RangeShift.Outcome outcome) {
        assertThat(proper("5d", "4", timesCeiling * CEILING).engine().outcome()).isEqualTo(outcome);
    }

    @Test
    void standing_still_nothing_slips() {
        RangeShift shift = proper("5d", "1", 0);

        assertThat(shift.cone().slipEnergy().value()).isZero();
        assertThat(shift.engine().outcome()).isEqualTo(RangeShift.Outcome.STANDING);
        assertThat(shift.verdict()).isEqualTo(ShiftVerdict.PROPER);
    }

    @Test
    void every_figure_carries_its_formula() {
        assertThat(proper("5d", "4", 25).figures())
                .hasSize(13)
                .allSatisfy((name, figure) -> assertThat(figure.note()).as(name).isNotBlank());
    }

    /** Dog speed difference at the mainshaft n (1 - s); by hand. */
    @Test
    void the_splitter_meets_its_dogs_apart() {
        SplitShift shift = SplitShift.of(TRUCK, gear("6d"), gear("6o"), 60);

        assertThat(shift.dogSpeedDifference().value()).isCloseTo(60 / 60.0 * 312 * 3.5 * 0.15, within(1e-9));
    }

    private static double ratio(double a, double b) {
        return a / b;
    }

    @Nested
    class Refusals {

        @Test
        void a_shift_within_one_range() {
            assertThatThrownBy(() -> RangeShiftQuestion.proper(gear("3"), gear("4"), 20))
                    .hasMessage(
                            "range shift: 3 to 4 stays in one range; give a gear of low range and one of high range");
        }

        @Test
        void a_road_speed_that_cannot_be() {
            assertThatThrownBy(() -> RangeShiftQuestion.proper(gear("5d"), gear("4"), Double.NaN))
                    .hasMessage("road speed: NaN km/h cannot be; give 0 to 200, and rolling back as such");
        }

        @Test
        void a_splitter_that_cannot_stay() {
            assertThatThrownBy(() -> new RangeShiftQuestion(
                            gear("5d"),
                            gear("4"),
                            20,
                            Clutch.ENGAGED,
                            LeverTiming.PRESELECTED,
                            Rolling.FORWARD,
                            SplitterMove.STAYS_SPLIT))
                    .hasMessage("splitter: it can stay split only from a split gear to an unsplit one, not 5d to 4");
        }

        @Test
        void an_order_where_the_splitter_stays() {
            assertThatThrownBy(() -> split("5d", "4", 20, SplitterMove.RANGE_FIRST))
                    .hasMessage("order: from 5d to 4 the splitter does not move, so nothing comes first; leave the"
                            + " order out");
        }

        @Test
        void a_box_without_a_range() {
            TruckProfile five = TruckDraft.named("five")
                    .mainRatios(List.of(6.0, 1.0))
                    .set(Parameter.AXLE_RATIO, 4)
                    .set(Parameter.TYRE_REVS, 312)
                    .set(Parameter.GOVERNED_RPM, 2200)
                    .build();

            assertThatThrownBy(() -> new AnalyseRangeShift(five))
                    .hasMessage("gearbox.range-ratio: truck five has no range to shift");
        }

        @Test
        void a_split_shift_that_moves_the_lever() {
            assertThatThrownBy(() -> SplitShift.of(TRUCK, gear("5d"), gear("6o"), 20))
                    .hasMessage("split shift: 5d to 6o is not the splitter alone; give two gears of one lever position"
                            + " and range");
        }
    }

    @Provide
    Arbitrary<TruckProfile> trucks() {
        return SampleTrucks.byTheRule();
    }

    @Property
    void energy_grows_with_the_square_of_road_speed(
            @ForAll("trucks") TruckProfile truck,
            @ForAll @DoubleRange(min = 1, max = 60) double kmh,
            @ForAll @DoubleRange(min = 0.1, max = 3) double factor) {
        AnalyseRangeShift analysis = new AnalyseRangeShift(truck);
        Gear from = truck.gears().forwardIn(Range.HIGH).get(0);
        Gear to = truck.gears().forwardIn(Range.LOW).get(0);

        double once = analysis.of(RangeShiftQuestion.proper(from, to, kmh))
                .cone()
                .slipEnergy()
                .value();
        double again = analysis.of(RangeShiftQuestion.proper(from, to, kmh * factor))
                .cone()
                .slipEnergy()
                .value();

        assertThat(again / once).isCloseTo(factor * factor, within(1e-9 * factor * factor));
    }

    /** Common practice, no source; here by the same engine speed before the shift, at which the split gear rolls faster. */
    @Property
    void overdrive_to_low_is_worse_than_direct_to_low_for_every_layout(
            @ForAll("trucks") TruckProfile truck, @ForAll @DoubleRange(min = 600, max = 2000) double rpm) {
        Assume.that(truck.splitter().isPresent());
        AnalyseRangeShift analysis = new AnalyseRangeShift(truck);
        Gear low = unsplitOf(truck, Range.LOW, Split.DIRECT);
        Gear direct = unsplitOf(truck, Range.HIGH, Split.DIRECT);
        Gear overdrive = unsplitOf(truck, Range.HIGH, Split.SPLIT);

        assertThat(energy(
                        analysis.of(RangeShiftQuestion.proper(overdrive, low, truck.roadKmh(rpm / overdrive.ratio())))))
                .isGreaterThan(energy(
                        analysis.of(RangeShiftQuestion.proper(direct, low, truck.roadKmh(rpm / direct.ratio())))));
    }

    private static Gear unsplitOf(TruckProfile truck, Range range, Split split) {
        return truck.gears().forwardIn(range).stream()
                .filter(gear -> gear.split() == split || gear.split() == Split.NONE)
                .findFirst()
                .orElseThrow();
    }
}
