package witnessmark.gearbox.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.driveline.JointLine;
import witnessmark.gearbox.evidence.ComputedFinding.State;
import witnessmark.gearbox.exposure.Exposure;
import witnessmark.gearbox.exposure.Journey;
import witnessmark.gearbox.shift.AnalyseRangeShift;
import witnessmark.gearbox.shift.InRangeShift;
import witnessmark.gearbox.shift.RangeShift;
import witnessmark.gearbox.shift.RangeShiftQuestion;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;
import witnessmark.gearbox.shift.RangeShiftQuestion.Rolling;
import witnessmark.gearbox.shift.RangeShiftQuestion.SplitterMove;
import witnessmark.gearbox.shift.ShiftVerdict;
import witnessmark.gearbox.start.StartQuestion;
import witnessmark.knowledge.KnowledgeBase;

class EvidenceTest {

    private static final TruckProfile TRUCK = SampleTrucks.splitHigh().build();
    private static final double CEILING = 2000 * 60 / (3.4 * 3.5 * 312);

    private static List<ComputedFinding> shift(String from, String to, double kmh) {
        RangeShiftQuestion question = RangeShiftQuestion.proper(
                TRUCK.gears().named(from), TRUCK.gears().named(to), kmh);
        return ShiftEvidence.of(TRUCK, new AnalyseRangeShift(TRUCK).of(question));
    }

    private static ComputedFinding named(List<ComputedFinding> findings, String id) {
        return findings.stream().filter(f -> f.id().equals(id)).findFirst().orElseThrow();
    }

    private static List<ComputedFinding> shift(Clutch clutch, LeverTiming lever, double kmh) {
        return ShiftEvidence.of(
                TRUCK,
                new AnalyseRangeShift(TRUCK)
                        .of(new RangeShiftQuestion(
                                TRUCK.gears().named("5d"),
                                TRUCK.gears().named("4"),
                                kmh,
                                clutch,
                                lever,
                                Rolling.FORWARD,
                                SplitterMove.AS_THE_GEARS_SAY)));
    }

    @Test
    void a_downshift_at_1_6_times_the_ceiling_is_told_with_its_condition() {
        List<ComputedFinding> findings = shift("5d", "4", 1.6 * CEILING);

        ComputedFinding overspeed = named(findings, "computed-engine-overspeed-in-low");
        assertThat(overspeed.summary())
                .startsWith("the reported downshift would have driven the engine to 1.6 times governed speed: possible"
                        + " only with the lever home and the clutch engaged (pedal up); with the pedal down the disc"
                        + " takes that speed, unseen");
        assertThat(overspeed.inputs())
                .containsKeys("road speed", "ratio of gear 4", "axle ratio", "tyre", "governed speed");
        assertThat(overspeed.formula()).isNotBlank();
        assertThat(named(findings, "computed-low-range-above-ceiling").summary())
                .isEqualTo("the reported shift to gear 4 at 51.71 km/h (32.13 mph) was above its ceiling of 32.32 km/h"
                        + " (20.08 mph)");
    }

    @Test
    void what_follows_from_one_road_speed_is_counted_once() {
        assertThat(shift("5d", "4", 1.6 * CEILING))
                .extracting(ComputedFinding::state)
                .containsExactly(State.PRESENT, State.NOT_COUNTED, State.NOT_COUNTED);
        assertThat(shift("5d", "4", 0.9 * CEILING))
                .extracting(ComputedFinding::state)
                .containsExactly(State.ABSENT, State.NOT_COUNTED, State.NOT_COUNTED);
    }

    @Test
    void a_lever_home_first_burns_the_cone_under_the_ceiling_too_and_that_counts() {
        List<ComputedFinding> findings = shift(Clutch.ENGAGED, LeverTiming.LEVER_HOME_FIRST, 0.9 * CEILING);

        assertThat(named(findings, "computed-low-range-above-ceiling").state()).isEqualTo(State.ABSENT);
        assertThat(named(findings, "computed-cone-energy-high").state()).isEqualTo(State.PRESENT);
    }

    @Test
    void with_the_pedal_down_it_is_the_disc_that_is_held_against_its_own_limit() {
        // Limit assumed at 1.5 times governed speed.
        assertThat(named(shift(Clutch.PEDAL_DOWN, LeverTiming.PRESELECTED, 1.6 * CEILING), "computed-disc-overspeed")
                        .state())
                .isEqualTo(State.PRESENT);
        assertThat(named(shift(Clutch.PEDAL_DOWN, LeverTiming.PRESELECTED, 1.4 * CEILING), "computed-disc-overspeed")
                        .state())
                .isEqualTo(State.ABSENT);
    }

    @Test
    void a_lever_that_stayed_in_neutral_drives_neither_engine_nor_disc() {
        assertThat(shift(Clutch.ENGAGED, LeverTiming.IN_NEUTRAL, 1.6 * CEILING))
                .extracting(ComputedFinding::id)
                .containsExactly("computed-low-range-above-ceiling", "computed-cone-energy-high");
    }

    @Test
    void an_upshift_tells_of_energy_only() {
        List<ComputedFinding> findings = shift("4", "5d", 1.3 * CEILING);

        assertThat(findings).extracting(ComputedFinding::id).containsExactly("computed-cone-energy-high");
        assertThat(findings).extracting(ComputedFinding::state).containsExactly(State.PRESENT);
    }

    @Test
    void a_lever_downshift_within_one_range_tells_of_the_engine_and_an_upshift_of_nothing() {
        InRangeShift down =
                InRangeShift.of(TRUCK, TRUCK.gears().named("7d"), TRUCK.gears().named("5d"), 80, Clutch.ENGAGED);
        InRangeShift up =
                InRangeShift.of(TRUCK, TRUCK.gears().named("5d"), TRUCK.gears().named("6d"), 40, Clutch.ENGAGED);

        // 80 km/h: 80/60 x 312 x 3.5 x 2.744 = 3995 rpm, 2.0 times 2000 rpm; recomputed by hand.
        assertThat(down.engineAfter().value()).isCloseTo(3995.3, within(0.1));
        assertThat(ShiftEvidence.of(TRUCK, down))
                .extracting(ComputedFinding::id, ComputedFinding::state)
                .containsExactly(tuple("computed-engine-overspeed-in-low", State.PRESENT));
        assertThat(ShiftEvidence.of(TRUCK, up)).isEmpty();
    }

    private static List<ComputedFinding> start(TruckProfile truck, String gear, double massKg, double grade) {
        return StartEvidence.of(truck, new StartQuestion(truck.gears().named(gear), massKg, grade));
    }

    @Test
    void a_start_in_high_range_is_too_high_a_gear() {
        List<ComputedFinding> high = start(TRUCK, "6d", 36_000, 2);
        List<ComputedFinding> low = start(TRUCK, "1", 36_000, 2);

        assertThat(named(high, "computed-start-gear-too-high").state()).isEqualTo(State.PRESENT);
        assertThat(named(high, "computed-start-gear-too-high").summary()).contains("times that of gear 1");
        assertThat(named(low, "computed-start-gear-too-high").state()).isEqualTo(State.ABSENT);
        assertThat(named(low, "computed-mainshaft-torque-over-yield").inputs()).containsKey("mainshaft diameter");
    }

    @Test
    void gradeability_is_the_trucks_in_its_lowest_gear_and_not_the_chosen_gears() {
        ComputedFinding tooHighAGear = named(start(TRUCK, "4", 36_000, 8), "computed-gradeability-short");
        List<ComputedFinding> beyond = start(TRUCK, "1", 120_000, 20);

        assertThat(tooHighAGear.state()).isEqualTo(State.NOT_COUNTED);
        assertThat(named(beyond, "computed-gradeability-short").state()).isEqualTo(State.PRESENT);
        assertThat(named(beyond, "computed-gradeability-short").summary())
                .endsWith("the reported grade of 20 % is beyond it, so the clutch slips in any gear");
        assertThat(named(beyond, "computed-start-gear-too-high").state()).isEqualTo(State.ABSENT);
    }

    @Test
    void an_assumed_shaft_proves_nothing_and_a_measured_one_does() {
        TruckProfile thin =
                SampleTrucks.splitHigh().set(Parameter.MAINSHAFT_DIAMETER, 25).build();

        assertThat(named(start(TRUCK, "1", 36_000, 2), "computed-mainshaft-torque-over-yield")
                        .state())
                .isEqualTo(State.NOT_COUNTED);
        // Load 36 t on 6 %: T_wheel 12.3 kNm, mainshaft 3.5 kNm in direct, 16 T / (pi 0.025^3) = 1145 MPa, over 522.
        assertThat(named(start(thin, "8d", 36_000, 6), "computed-mainshaft-torque-over-yield")
                        .state())
                .isEqualTo(State.PRESENT);
    }

    @Test
    void a_long_tow_rubs_long_and_a_short_one_clears_nothing() {
        assertThat(tow(100).id()).isEqualTo("computed-tow-rub-long");
        assertThat(tow(100).state()).isEqualTo(State.PRESENT);
        assertThat(tow(1).state()).isEqualTo(State.NOT_COUNTED);
        assertThat(tow(1).limit().note()).contains("no safe distance is known");
    }

    @Test
    void a_coast_is_held_against_a_bound_of_ones_own() {
        Exposure coast = Exposure.of(TRUCK, Exposure.Mode.COAST, Range.HIGH, Journey.overMinutes(90, 2));

        ComputedFinding finding = RollingEvidence.of(TRUCK, coast, Figure.given(100, Unit.METRE));

        assertThat(finding.id()).isEqualTo("computed-coast-rub-long");
        assertThat(finding.state()).isEqualTo(State.PRESENT);
        assertThat(RollingEvidence.of(TRUCK, coast).state()).isEqualTo(State.NOT_COUNTED);
    }

    private static ComputedFinding tow(double km) {
        return RollingEvidence.of(
                TRUCK, Exposure.of(TRUCK, Exposure.Mode.TOW, Range.HIGH, Journey.overDistance(80, km)));
    }

    /**
     * Bounds of 2 km in a tow and 5 km in a coast: judgement, no safe distance is known. A tow slides by the shaft's
     * circumference, pi x 70 mm, for each of 312 x 3.5 turns in a km: 0.24014 km in each km, so 2 km in 8.3284 km.
     */
    @Test
    void sliding_is_long_from_its_bound_on() {
        assertThat(tow(8.33).state()).isEqualTo(State.PRESENT);
        assertThat(tow(8.32).state()).isEqualTo(State.NOT_COUNTED);
        Figure minute = Exposure.of(TRUCK, Exposure.Mode.COAST, Range.HIGH, Journey.overMinutes(80, 1))
                .worst()
                .distance();
        assertThat(coast(4.999 / minute.value()).state()).isEqualTo(State.NOT_COUNTED);
        assertThat(coast(5.001 / minute.value()).state()).isEqualTo(State.PRESENT);
    }

    private static ComputedFinding coast(double minutes) {
        return RollingEvidence.of(
                TRUCK, Exposure.of(TRUCK, Exposure.Mode.COAST, Range.HIGH, Journey.overMinutes(80, minutes)));
    }

    /** What the heat depends on how gently the clutch was let in proves nothing against the gear. */
    @Test
    void a_start_that_is_hot_only_when_let_in_gently_is_not_counted() {
        TruckProfile truck = SampleTrucks.splitHigh().build();
        double least = slipEnergy(truck);
        TruckProfile between = SampleTrucks.splitHigh()
                .set(Parameter.CLUTCH_START_ENERGY, least * 1.001)
                .build();
        TruckProfile below = SampleTrucks.splitHigh()
                .set(Parameter.CLUTCH_START_ENERGY, least * 0.999)
                .build();

        assertThat(named(start(between, "4", 36_000, 2), "computed-start-gear-too-high")
                        .state())
                .isEqualTo(State.NOT_COUNTED);
        assertThat(named(start(below, "4", 36_000, 2), "computed-start-gear-too-high")
                        .state())
                .isEqualTo(State.PRESENT);
    }

    private static double slipEnergy(TruckProfile truck) {
        return named(start(truck, "4", 36_000, 2), "computed-start-gear-too-high")
                .result()
                .value();
    }

    /** Governed 2000 rpm, judgement: 1 % for reading a dial, then a quarter more; 1.0 front ratio turns 18.2 rpm a km/h. */
    @ParameterizedTest
    @CsvSource({
        "32.96, BELOW_IDLE, HARD",
        "32.97, WITHIN_GOVERNED, PROPER",
        "110.9, WITHIN_GOVERNED, PROPER",
        "111.1, ENGINE_OVERSPED, HARD",
        "137.3, ENGINE_OVERSPED, HARD",
        "137.4, ENGINE_OVERSPED, DESTRUCTIVE"
    })
    void a_shift_within_a_range_is_judged_by_the_engine_after_it(
            double kmh, RangeShift.Outcome outcome, ShiftVerdict verdict) {
        InRangeShift shift =
                InRangeShift.of(TRUCK, TRUCK.gears().named("8o"), TRUCK.gears().named("8d"), kmh, Clutch.ENGAGED);

        assertThat(shift.outcome()).isEqualTo(outcome);
        assertThat(shift.verdict()).isEqualTo(verdict);
    }

    @Test
    void unequal_joint_angles_ripple() {
        assertThat(RollingEvidence.of(new JointLine(6, 3, 0), 1500).state()).isEqualTo(State.PRESENT);
        assertThat(RollingEvidence.of(new JointLine(4, 4, 0), 1500).state()).isEqualTo(State.ABSENT);
        // 12 degrees each way cancel, but shake the shaft between with 1,939 rad/s2 at 2000 rpm.
        assertThat(RollingEvidence.of(new JointLine(12, 12, 0), 2000).state()).isEqualTo(State.PRESENT);
        assertThat(RollingEvidence.of(new JointLine(12, 12, 0), 2000).result().value())
                .isCloseTo(1939, within(1.0));
    }

    /** Bounds: 1000 rad/s2 of a joint (usual value, from memory), 0.0027 of ripple (driveline makers' public guidance). */
    @Test
    void joints_that_cancel_are_held_against_the_bound_of_one_joint_and_others_against_that_of_both() {
        assertThat(RollingEvidence.of(new JointLine(12, 12, 0), 2000).limit().value())
                .isEqualTo(1000);
        // 8.62 degrees make 1000 rad/s2 at 2000 rpm, by 1939 at 12 degrees and the square of the angle.
        assertThat(RollingEvidence.of(new JointLine(8.5, 8.7, 0), 2000).limit().value())
                .isEqualTo(1000);
        assertThat(RollingEvidence.of(new JointLine(8.7, 8.5, 0), 2000).limit().value())
                .isEqualTo(1000);
        assertThat(RollingEvidence.of(new JointLine(6, 3, 0), 1500).limit().value())
                .isEqualTo(0.0027);
    }

    @Test
    void the_worse_joint_is_told_whichever_end_it_is_at() {
        String worse = new JointLine(12, 12, 0).driveAcceleration(2000).text();

        assertThat(RollingEvidence.of(new JointLine(12, 5, 0), 2000).summary()).contains(worse);
        assertThat(RollingEvidence.of(new JointLine(5, 12, 0), 2000).summary()).contains(worse);
        assertThat(RollingEvidence.of(new JointLine(2, 2, 0), 1500).summary()).contains("within the usual guidance");
    }

    @Test
    void sliding_is_told_with_its_bound_and_a_speed_above_the_ordinary() {
        assertThat(tow(100).summary())
                .startsWith("the reported tow let every floating gear slide ")
                .contains("above the bound of 2 km")
                .doesNotContain("ordinary driving");
        assertThat(tow(100).inputs().get("time").value()).isCloseTo(75, within(1e-9));
        assertThat(tow(1).summary()).contains("under the bound of 2 km", "which clears nothing");
        assertThat(coast(1).summary()).startsWith("the reported coast let gear R slide ");
        assertThat(RollingEvidence.of(
                                TRUCK, Exposure.of(TRUCK, Exposure.Mode.TOW, Range.LOW, Journey.overDistance(80, 1)))
                        .summary())
                .contains("the most in ordinary driving");
    }

    @Test
    void times_are_said_with_the_digits_that_tell() {
        assertThat(Stream.of(0.05, 0.1, 99.9, 100.0)
                        .map(value -> TimesText.times(Figure.computed(value, Unit.RATIO, "a / b"))))
                .containsExactly("0.05 times", "0.1 times", "99.9 times", "100 times");
    }

    /** A hundredth above the ceiling is within the reading of a dial: judgement. */
    @Test
    void half_a_hundredth_above_the_ceiling_is_not_above_it() {
        assertThat(named(shift("5d", "4", 1.005 * CEILING), "computed-low-range-above-ceiling")
                        .state())
                .isEqualTo(State.ABSENT);
        assertThat(named(shift("5d", "4", 1.015 * CEILING), "computed-low-range-above-ceiling")
                        .state())
                .isEqualTo(State.PRESENT);
    }

    /** Gear 4 is direct times the range of 3.4, 5d the first main gear of high range. */
    @Test
    void a_shift_is_told_with_both_ratios_and_the_disc_with_its_limit() {
        ComputedFinding above =
                named(shift(Clutch.PEDAL_DOWN, LeverTiming.PRESELECTED, 1.6 * CEILING), "computed-disc-overspeed");

        assertThat(above.inputs().get("ratio of gear 4").value()).isCloseTo(3.4, within(1e-9));
        assertThat(above.inputs().get("ratio of gear 5d").value()).isCloseTo(2.744, within(1e-9));
        assertThat(above.summary()).contains(": above the disc's limit of ");
        assertThat(named(shift(Clutch.PEDAL_DOWN, LeverTiming.PRESELECTED, 1.4 * CEILING), "computed-disc-overspeed")
                        .summary())
                .contains(": not above the disc's limit of ");
    }

    @Test
    void a_start_is_held_against_the_heat_it_makes_or_the_torque_it_lacks() {
        ComputedFinding locks = named(start(TRUCK, "1", 36_000, 2), "computed-start-gear-too-high");
        ComputedFinding slips = named(start(TRUCK, "1", 120_000, 20), "computed-start-gear-too-high");

        assertThat(locks.limit().value()).isEqualTo(TRUCK.value(Parameter.CLUTCH_START_ENERGY));
        assertThat(locks.summary()).contains("clutch heat ").endsWith("; it is the lowest gear there is");
        assertThat(slips.limit().unit()).isEqualTo(slips.result().unit());
        assertThat(slips.summary()).contains("load at the clutch ", ", clutch torque ");
        assertThat(named(start(TRUCK, "6d", 36_000, 2), "computed-start-gear-too-high")
                        .summary())
                .doesNotContain("it is the lowest gear");
    }

    @Test
    void a_shaft_that_the_clutch_spares_and_one_that_was_not_measured_are_told_so() {
        TruckProfile measured =
                SampleTrucks.splitHigh().set(Parameter.MAINSHAFT_DIAMETER, 60).build();

        String spared = named(start(measured, "8d", 200_000, 30), "computed-mainshaft-torque-over-yield")
                .summary();
        String held = named(start(TRUCK, "1", 36_000, 2), "computed-mainshaft-torque-over-yield")
                .summary();

        assertThat(spared).contains("were the clutch not to slip before").doesNotContain("is assumed");
        assertThat(held).doesNotContain("were the clutch not to slip").contains("the shaft's diameter is assumed");
    }

    @Test
    void the_knowledge_base_knows_every_finding_that_can_be_computed() {
        KnowledgeBase knowledge = ShippedKnowledge.load();

        assertThat(knowledge.findings())
                .containsKeys(Stream.of(ComputedFinding.Kind.values())
                        .map(ComputedFinding.Kind::id)
                        .toArray(String[]::new));
        assertThat(knowledge.findings().keySet())
                .filteredOn(id -> id.startsWith("computed-"))
                .hasSameSizeAs(ComputedFinding.Kind.values());
    }
}
