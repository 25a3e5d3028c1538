package witnessmark.gearbox.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.driveline.JointLine;
import witnessmark.gearbox.evidence.ComputedFinding.State;
import witnessmark.gearbox.exposure.Exposure;
import witnessmark.gearbox.exposure.Journey;
import witnessmark.gearbox.shift.AnalyseRangeShift;
import witnessmark.gearbox.shift.RangeShiftQuestion;
import witnessmark.gearbox.start.StartQuestion;

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

    @Test
    void a_downshift_at_1_6_times_the_ceiling_is_told_with_its_condition() {
        List<ComputedFinding> findings = shift("5d", "4", 1.6 * CEILING);

        assertThat(findings).extracting(ComputedFinding::state).containsOnly(State.PRESENT);
        ComputedFinding overspeed = named(findings, "computed-engine-overspeed-in-low");
        assertThat(overspeed.summary())
                .isEqualTo("the reported downshift would have driven the engine to 1.6 times governed speed: possible"
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
    void a_downshift_under_the_ceiling_is_absent() {
        assertThat(shift("5d", "4", 0.9 * CEILING))
                .extracting(ComputedFinding::state)
                .containsOnly(State.ABSENT);
    }

    @Test
    void an_upshift_tells_of_energy_only() {
        assertThat(shift("4", "5d", 1.3 * CEILING))
                .extracting(ComputedFinding::id)
                .containsExactly("computed-cone-energy-high");
    }

    @Test
    void a_start_in_high_range_is_too_high_a_gear() {
        List<ComputedFinding> high =
                StartEvidence.of(TRUCK, new StartQuestion(TRUCK.gears().named("6d"), 36_000, 2));
        List<ComputedFinding> low =
                StartEvidence.of(TRUCK, new StartQuestion(TRUCK.gears().named("1"), 36_000, 2));

        assertThat(named(high, "computed-start-gear-too-high").state()).isEqualTo(State.PRESENT);
        assertThat(named(low, "computed-start-gear-too-high").state()).isEqualTo(State.ABSENT);
        assertThat(named(low, "computed-gradeability-short").state()).isEqualTo(State.ABSENT);
        assertThat(named(low, "computed-mainshaft-torque-over-yield").inputs()).containsKey("mainshaft diameter");
    }

    @Test
    void a_grade_beyond_the_clutch_is_short_gradeability() {
        ComputedFinding finding = named(
                StartEvidence.of(TRUCK, new StartQuestion(TRUCK.gears().named("4"), 36_000, 20)),
                "computed-gradeability-short");

        assertThat(finding.state()).isEqualTo(State.PRESENT);
        assertThat(finding.summary())
                .endsWith("the reported grade of 20 % is beyond it, so the clutch slips without end");
    }

    @Test
    void a_long_tow_rubs_long_and_a_short_one_does_not() {
        assertThat(tow(100).id()).isEqualTo("computed-tow-rub-long");
        assertThat(tow(100).state()).isEqualTo(State.PRESENT);
        assertThat(tow(1).state()).isEqualTo(State.ABSENT);
        assertThat(tow(1).limit().note()).contains("no safe distance is known");
    }

    @Test
    void a_coast_is_held_against_a_bound_of_ones_own() {
        Exposure coast = Exposure.of(TRUCK, Exposure.Mode.COAST, Range.HIGH, Journey.overMinutes(90, 2));

        ComputedFinding finding = RollingEvidence.of(TRUCK, coast, Figure.given(100, Unit.METRE));

        assertThat(finding.id()).isEqualTo("computed-coast-rub-long");
        assertThat(finding.state()).isEqualTo(State.PRESENT);
        assertThat(RollingEvidence.of(TRUCK, coast).state()).isEqualTo(State.ABSENT);
    }

    private static ComputedFinding tow(double km) {
        return RollingEvidence.of(
                TRUCK, Exposure.of(TRUCK, Exposure.Mode.TOW, Range.HIGH, Journey.overDistance(80, km)));
    }

    @Test
    void unequal_joint_angles_ripple() {
        assertThat(RollingEvidence.of(new JointLine(6, 3, 0)).state()).isEqualTo(State.PRESENT);
        assertThat(RollingEvidence.of(new JointLine(4, 4, 0)).state()).isEqualTo(State.ABSENT);
    }
}
