package witnessmark.gearbox.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.TruckProfile;
import witnessmark.truck.ReadyTrucks;

class ShiftPlanTest {

    /** Common practice, no source; depends on the engine, hence the width. */
    @ParameterizedTest
    @ValueSource(strings = {"nine-ratio", "ten-ratio", "thirteen-ratio", "eighteen-ratio"})
    void the_plan_begins_near_half_of_governed_speed(String name) {
        TruckProfile truck = ReadyTrucks.named(name);

        double first = ShiftPlan.of(truck).shifts().get(0).shiftAt().value();

        assertThat(first / truck.value(Parameter.GOVERNED_RPM)).isBetween(0.43, 0.62);
    }

    /** Limit of the lowest gear 1.15 x 600, of the top gear 1100, between by ln(ratio); ratios 4, 2, 1: by hand. */
    @Test
    void the_limit_rises_evenly_with_even_steps() {
        TruckProfile truck = TruckDraft.named("three")
                .mainRatios(List.of(4.0, 2.0, 1.0))
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2300)
                .set(Parameter.LOWEST_PULLING_RPM, 1100)
                .set(Parameter.MASS_EMPTY, 3000)
                .set(Parameter.MASS_LOADED, 3000)
                .build();

        List<PlannedShift> shifts = ShiftPlan.of(truck).shifts();

        assertThat(shifts.get(0).luggingLimit().value()).isCloseTo(895, within(1e-9));
        assertThat(shifts.get(0).shiftAt().value()).isCloseTo(1790, within(1e-9));
        assertThat(shifts.get(1).luggingLimit().value()).isCloseTo(1100, within(1e-9));
        assertThat(shifts.get(1).shiftAt().value()).isCloseTo(2200, within(1e-9));
        assertThat(shifts.get(1).roadSpeed().value()).isCloseTo(2200 * 60 / (2.0 * 4 * 312), within(1e-9));
    }

    /**
     * 60 t, f 0.01, no air drag, radius 0.5 m, gear 2, axle 4: load 60000 x 9.81 x 0.01 x 0.5 / 8 = 367.875 Nm, with
     * reserve 441.45 Nm, which this curve gives at 1041.45 rpm: by hand.
     */
    @Test
    void where_the_load_asks_more_the_torque_curve_sets_the_limit() {
        TruckProfile truck = TruckDraft.named("three")
                .mainRatios(List.of(4.0, 2.0, 1.0))
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 1000 / Math.PI)
                .set(Parameter.GOVERNED_RPM, 2300)
                .set(Parameter.LOWEST_PULLING_RPM, 1100)
                .set(Parameter.ROLLING_RESISTANCE, 0.01)
                .set(Parameter.DRAG_AREA, 0)
                .torqueCurve(Map.of(600.0, 200.0, 1000.0, 400.0, 1100.0, 500.0, 2300.0, 500.0))
                .build();

        ShiftPlan plan = ShiftPlan.of(truck, ShiftPlan.Floor.RISING_WITH_THE_GEAR, 60_000, 0);

        assertThat(plan.shifts().get(0).luggingLimit().value()).isCloseTo(1041.45, within(1e-9));
    }

    @Test
    void a_heavy_load_raises_the_limit_and_ends_the_plan_earlier() {
        TruckProfile truck = SampleTrucks.splitHigh().build();

        ShiftPlan level = ShiftPlan.of(truck, ShiftPlan.Floor.RISING_WITH_THE_GEAR, 36_000, 0);
        ShiftPlan hill = ShiftPlan.of(truck, ShiftPlan.Floor.RISING_WITH_THE_GEAR, 36_000, 6);

        assertThat(level.shifts())
                .last()
                .satisfies(shift -> assertThat(shift.luggingLimit().value()).isEqualTo(1100));
        assertThat(hill.shifts()).hasSizeBetween(1, level.shifts().size() - 1);
        PlannedShift last = hill.shifts().get(hill.shifts().size() - 1);
        PlannedShift same = level.shifts().get(hill.shifts().size() - 1);
        assertThat(last.luggingLimit().value())
                .isGreaterThan(same.luggingLimit().value());
    }

    @Test
    void a_step_too_wide_for_the_limit_is_marked() {
        TruckProfile truck = TruckDraft.named("wide")
                .mainRatios(List.of(3.0, 1.0))
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2000)
                .set(Parameter.LOWEST_PULLING_RPM, 1100)
                .build();

        PlannedShift shift = ShiftPlan.of(truck).shifts().get(0);

        assertThat(shift.belowLimit()).isTrue();
        assertThat(shift.shiftAt().value()).isEqualTo(2000);
    }

    private static TruckProfile onAGrade(double thirdOver) {
        return TruckDraft.named("three")
                .mainRatios(List.of(6.0, 3.0, thirdOver))
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 1000 / Math.PI)
                .set(Parameter.GOVERNED_RPM, 2000)
                .set(Parameter.LOWEST_PULLING_RPM, 1000)
                .set(Parameter.ROLLING_RESISTANCE, 0)
                .set(Parameter.DRAG_AREA, 0)
                .torqueCurve(Map.of(900.0, 1000.0, 2000.0, 1000.0))
                .build();
    }

    /**
     * 20 t on 12.5 %, radius 0.5 m, axle 4, 1000 Nm at any speed: sine of atan 0.125 = 0.1240347, pull 24336 N, 12168 Nm at
     * the wheel; gear 3 asks 1014 Nm, gear 6 507 Nm: by hand.
     */
    @Test
    void what_the_engine_cannot_pull_is_not_planned() {
        ShiftPlan plan = ShiftPlan.of(onAGrade(2), ShiftPlan.Floor.RISING_WITH_THE_GEAR, 20_000, 12.5);

        assertThat(plan.shifts()).isEmpty();
        assertThat(plan.highest()).map(Gear::id).contains("1");
        assertThat(plan.end()).hasValueSatisfying(end -> {
            assertThat(end.gear().id()).isEqualTo("2");
            assertThat(end.needed().value()).isCloseTo(1014, within(0.5));
            assertThat(end.torque().value()).isEqualTo(1000);
        });
        // 3.6 x 9.81 x 0.1240347 = 4.380 km/h in every second.
        assertThat(plan.lostPerSecond().value()).isCloseTo(4.380, within(5e-4));
    }

    /** At 1000 Nm gear 3 holds 12.3248 %: 20000 x 9.81 x sine x 0.5 / 12 = 1000, sine 0.122324; by hand. */
    @ParameterizedTest
    @CsvSource({"12.32, true", "12.33, false"})
    void a_gear_is_planned_up_to_the_grade_that_full_torque_holds(double grade, boolean planned) {
        ShiftPlan plan = ShiftPlan.of(onAGrade(2), ShiftPlan.Floor.RISING_WITH_THE_GEAR, 20_000, grade);

        assertThat(plan.shifts().isEmpty()).isEqualTo(!planned);
    }

    /** Ratio 3.5 to 1 from 2000 rpm lands at 571 rpm, below the 600 of idle, where the assumed curve begins; by hand. */
    @Test
    void a_step_that_lands_below_the_torque_curve_is_not_planned() {
        TruckProfile truck = TruckDraft.named("two")
                .mainRatios(List.of(3.5, 1.0))
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2000)
                .build();

        ShiftPlan plan = ShiftPlan.of(truck, ShiftPlan.Floor.RISING_WITH_THE_GEAR, 8_000, 0);

        assertThat(plan.shifts()).isEmpty();
        assertThat(plan.highest()).map(Gear::id).contains("1");
        assertThat(plan.end().orElseThrow().engineSpeed().value()).isEqualTo(571);
    }

    /**
     * Torque falls from 1000 Nm at 1500 rpm to 400 at 2000: gear 1 is held up to where that meets the 507 Nm it asks on
     * 12.5 %, 1911 rpm, and a careful step of 2.2 to 900 rpm is due at 1980; by hand.
     */
    @Test
    void a_gear_that_does_not_come_to_the_speed_for_the_next_is_the_highest_and_the_next_is_not_reached() {
        TruckProfile truck = TruckDraft.named("two")
                .mainRatios(List.of(6.0, 6 / 2.2))
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 1000 / Math.PI)
                .set(Parameter.GOVERNED_RPM, 2000)
                .set(Parameter.LOWEST_PULLING_RPM, 900)
                .set(Parameter.ROLLING_RESISTANCE, 0)
                .set(Parameter.DRAG_AREA, 0)
                .torqueCurve(Map.of(900.0, 1000.0, 1500.0, 1000.0, 2000.0, 400.0))
                .build();

        ShiftPlan plan = ShiftPlan.of(truck, ShiftPlan.Floor.LOWEST_PULLING_SPEED, 20_000, 12.5);

        assertThat(plan.highest()).map(Gear::id).contains("1");
        assertThat(plan.end()).hasValueSatisfying(end -> {
            assertThat(end.gear().id()).isEqualTo("1");
            assertThat(end.notReached().id()).isEqualTo("2");
            assertThat(end.engineSpeed().value()).isEqualTo(1980);
        });
    }

    private static TruckProfile withACrawler() {
        return TruckDraft.named("crawler")
                .mainRatios(List.of(3.0, 2.0, 1.4, 1.0))
                .set(Parameter.LOW_RATIO, 12.0)
                .set(Parameter.RANGE_RATIO, 4)
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2000)
                .build();
    }

    /** 12 to 3 is a step of 4: 2000 rpm land at 500, below idle's 600, where the assumed curve begins; by hand. */
    @Test
    void a_plan_goes_on_from_a_start_above_a_deep_reduction() {
        ShiftPlan plan = ShiftPlan.of(withACrawler());

        assertThat(plan.gaps())
                .extracting(gap -> gap.from().id() + "-" + gap.to().id())
                .containsExactly("L-1");
        assertThat(plan.highest()).map(Gear::id).contains("8");
        assertThat(plan.end()).isEmpty();
        assertThat(plan.inOneGo()).isEqualTo(plan.shifts()).hasSize(7);
        // What comes after a start does not wait for the speed of the shift before it.
        assertThat(plan.shifts().get(0).shiftAt().value()).isLessThan(1500);
        assertThat(new DrawUpCoachingCard(withACrawler()).card().drops())
                .allSatisfy(drop -> assertThat(drop.most().value()).isLessThan(1000));
    }

    /** 400 t on 10 %: gear 1 asks 400000 x 9.81 x 0.107 x 0.51 / 48 = 4.5 kNm of a clutch that has 1.6; by hand. */
    @Test
    void above_a_deep_reduction_nothing_is_planned_that_cannot_be_started_in() {
        ShiftPlan plan = ShiftPlan.of(withACrawler(), ShiftPlan.Floor.RISING_WITH_THE_GEAR, 400_000, 10);

        assertThat(plan.gaps()).isEmpty();
        assertThat(plan.highest()).map(Gear::id).contains("L");
        assertThat(plan.end())
                .hasValueSatisfying(end -> assertThat(end.gear().id()).isEqualTo("1"));
    }

    @Test
    void on_a_wall_no_gear_pulls() {
        ShiftPlan plan = ShiftPlan.of(onAGrade(2), ShiftPlan.Floor.RISING_WITH_THE_GEAR, 60_000, 30);

        assertThat(plan.highest()).isEmpty();
        assertThat(plan.shifts()).isEmpty();
        assertThat(plan.meanShiftSpeed()).isEmpty();
    }

    @Test
    void no_shift_lands_below_the_lowest_speed_of_the_torque_curve() {
        TruckProfile truck = SampleTrucks.splitHigh()
                .torqueCurve(Map.of(1050.0, 1800.0, 1300.0, 2000.0, 2000.0, 1500.0))
                .build();

        assertThat(ShiftPlan.of(truck).shifts())
                .isNotEmpty()
                .allSatisfy(shift -> assertThat(shift.rpmAfter().value()).isGreaterThanOrEqualTo(1050 - 1e-9));
    }

    /** Rising torque: gear 2 is held from where 600 + 0.4 (n - 1000) reaches the load, which is over 1000 rpm. */
    @Test
    void a_gear_held_only_higher_up_is_taken_later() {
        TruckProfile truck = SampleTrucks.twoGears(6.0, 5.0, 1000)
                .torqueCurve(Map.of(1000.0, 600.0, 2000.0, 1000.0))
                .build();
        // 24335.6 N x 0.5 m / 20 = 608.4 Nm: held from 1021 rpm, so the shift comes at 1.2 x 1021 = 1225.2, 1226 rpm.
        ShiftPlan plan = ShiftPlan.of(truck, ShiftPlan.Floor.LOWEST_PULLING_SPEED, 20_000, 12.5);

        assertThat(plan.shifts().get(0).luggingLimit().value()).isEqualTo(1000);
        assertThat(plan.shifts().get(0).shiftAt().value()).isEqualTo(1226);
    }

    @Test
    void a_card_is_drawn_for_a_truck_that_its_own_grade_stops() {
        TruckProfile heavy = SampleTrucks.splitHigh()
                .set(Parameter.MASS_LOADED, 150_000)
                .set(Parameter.PLAN_GRADE, 6)
                .build();

        CoachingCard card = new DrawUpCoachingCard(heavy).card();

        assertThat(card.plan().end()).isPresent();
        assertThat(card.drops()).hasSize(4);
    }

    @Test
    void a_load_or_grade_that_cannot_be_is_refused() {
        TruckProfile truck = SampleTrucks.splitHigh().build();

        assertThatThrownBy(() -> ShiftPlan.of(truck, ShiftPlan.Floor.RISING_WITH_THE_GEAR, 36_000, 70))
                .hasMessage("grade: 70.0 % cannot be; give -40 to 40, uphill positive");
        assertThatThrownBy(() -> ShiftPlan.of(truck, ShiftPlan.Floor.RISING_WITH_THE_GEAR, 36, 0))
                .hasMessage("mass: 36.0 kg cannot be; give 500 to 400000 kg");
    }

    @Test
    void one_gear_has_no_plan() {
        TruckProfile truck = TruckDraft.named("one")
                .mainRatios(List.of(3.0))
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2000)
                .build();

        ShiftPlan plan = ShiftPlan.of(truck);

        assertThat(plan.shifts()).isEmpty();
        assertThat(plan.meanShiftSpeed()).isEmpty();
        assertThat(plan.rangeEnergyShare()).isEmpty();
    }

    @Test
    void the_card_holds_what_the_driver_of_this_truck_needs() {
        TruckProfile truck = SampleTrucks.splitHigh().build();

        CoachingCard card = new DrawUpCoachingCard(truck).card();

        assertThat(card.lowRangeCeiling()).hasValueSatisfying(ceiling -> {
            assertThat(ceiling.gear().id()).isEqualTo("4");
            assertThat(ceiling.roadSpeed().value()).isCloseTo(2000 * 60 / (3.4 * 3.5 * 312), within(1e-9));
        });
        assertThat(card.ceilings()).extracting(c -> c.gear().id()).containsExactly("1", "2", "3", "4");
        assertThat(card.drops()).hasSize(4);
        assertThat(card.loaded().lowest()).map(Gear::id).contains("1");
        assertThat(card.points())
                .extracting(point -> point.topic().key())
                .contains("splitter-direct-before-low-range", "move-range-rolling-back", "preselect-range");
        assertThat(point(card, CoachingPoint.Topic.SPLITTER_DIRECT_BEFORE_LOW_RANGE)
                        .figures()
                        .get("split-energy")
                        .value())
                .isCloseTo(1 / (0.85 * 0.85), within(1e-9));
        assertThat(point(card, CoachingPoint.Topic.START_IN_LOW_RANGE)
                        .figures()
                        .get("torque-in-high")
                        .value())
                .isEqualTo(3.4);
    }

    @Test
    void a_card_says_nothing_of_a_splitter_that_is_not_there() {
        CoachingCard card = new DrawUpCoachingCard(ReadyTrucks.named("ten-ratio")).card();

        assertThat(card.points()).extracting(point -> point.topic().key()).noneMatch(key -> key.contains("split"));
    }

    private static CoachingPoint point(CoachingCard card, CoachingPoint.Topic topic) {
        return card.points().stream()
                .filter(p -> p.topic() == topic)
                .findFirst()
                .orElseThrow();
    }

    @Provide
    Arbitrary<TruckProfile> trucks() {
        return SampleTrucks.byTheRule();
    }

    @Property(tries = 300)
    void every_shift_lands_on_its_limit_and_none_comes_before_the_last(@ForAll("trucks") TruckProfile truck) {
        for (ShiftPlan.Floor floor : ShiftPlan.Floor.values()) {
            ShiftPlan plan = ShiftPlan.of(truck, floor, 36_000, 1);
            assertThat(plan.shifts()).allSatisfy(shift -> {
                if (!shift.belowLimit()) {
                    assertThat(shift.rpmAfter().value())
                            .isGreaterThanOrEqualTo(shift.luggingLimit().value() - 1e-9);
                }
                assertThat(shift.shiftAt().value()).isLessThanOrEqualTo(truck.value(Parameter.GOVERNED_RPM));
                assertThat(shift.roadSpeed().value())
                        .isLessThanOrEqualTo(shift.governed().roadSpeed().value());
            });
            assertThat(plan.shifts())
                    .extracting(shift -> shift.shiftAt().value())
                    .isSorted();
        }
    }
}
