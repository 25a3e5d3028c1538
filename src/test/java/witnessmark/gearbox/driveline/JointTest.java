package witnessmark.gearbox.driveline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JointTest {

    /**
     * Cardan joint: closed form held against a search for the peak and a numerical derivative, outside the program;
     * mechanics handbooks give the like, from memory. Columns: angle, greatest and least ratio, ripple, where the
     * acceleration peaks, the peak at 1000 rpm, greatest lead.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 1.000152328, 0.999847695, 0.000304633, 44.991273, 3.340674, 0.004364",
        "3, 1.001372346, 0.998629535, 0.002742811, 44.921425, 30.078348, 0.039288",
        "5, 1.003819838, 0.996194698, 0.007625139, 44.781561, 83.620226, 0.109222",
        "8, 1.009827573, 0.990268069, 0.019559504, 44.439760, 214.514474, 0.280164",
        "10, 1.015426612, 0.984807753, 0.030618859, 44.123210, 335.852040, 0.438561",
        "30, 1.154700538, 0.866025404, 0.288675135, 37.021460, 3230.333568, 4.117194"
    })
    void one_joint_agrees_with_the_table(
            double angle, double most, double least, double ripple, double peakAt, double peak, double lead) {
        UniversalJoint joint = new UniversalJoint(angle);

        assertThat(joint.greatestRatio().value()).isCloseTo(most, within(1e-9));
        assertThat(joint.leastRatio().value()).isCloseTo(least, within(1e-9));
        assertThat(joint.ripple().value()).isCloseTo(ripple, within(1e-9));
        assertThat(joint.peakDegrees()).isCloseTo(peakAt, within(1e-4));
        assertThat(joint.peakAcceleration(1000).value()).isCloseTo(peak, within(peak * 1e-6));
        assertThat(joint.greatestLead().value()).isCloseTo(lead, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"3, 2000, 120.313390", "6, 1500, 271.086344"})
    void acceleration_grows_with_the_square_of_speed(double angle, double rpm, double expected) {
        assertThat(new UniversalJoint(angle).peakAcceleration(rpm).value())
                .isCloseTo(expected, within(expected * 1e-6));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 1.0154266119",
        "15, 1.0133161623",
        "30, 1.0075947781",
        "45, 0.9998828313",
        "60, 0.9922880394",
        "75, 0.9868010064",
        "90, 0.9848077530"
    })
    void the_ratio_of_a_ten_degree_joint_over_a_turn(double input, double ratio) {
        assertThat(new UniversalJoint(10).ratioAt(input)).isCloseTo(ratio, within(1e-10));
    }

    /** b_eq = sqrt|b1^2 - b2^2| or the sum (from memory), and the form by squares of sines; recomputed. */
    @Test
    void two_joints_cancel_or_add_with_their_phase() {
        assertThat(new JointLine(3, 3, 0).residualAngle().value()).isZero();
        assertThat(new JointLine(5, 3, 0).residualAngle().value()).isCloseTo(4, within(1e-9));
        assertThat(new JointLine(5, 3, 90).residualAngle().value()).isCloseTo(5.830952, within(1e-6));
        assertThat(new JointLine(5, 3, 0).residualAngleBySines().value()).isCloseTo(3.996337, within(1e-6));
        assertThat(new JointLine(5, 3, 90).residualAngleBySines().value()).isCloseTo(5.834888, within(1e-6));
        assertThat(new JointLine(5, 3, 45).residualAngle().value()).isBetween(4.0, 5.830952);
    }

    /** A driveline maker's public text advises a ripple of 0.0027 at most, which is 2.976506 degrees; recomputed. */
    @Test
    void the_usual_guidance_ends_just_under_three_degrees() {
        assertThat(new JointLine(2.9765, 0, 0).withinGuidance()).isTrue();
        assertThat(new JointLine(2.9766, 0, 0).withinGuidance()).isFalse();
    }

    @Test
    void equal_angles_do_not_spare_the_shaft_between() {
        JointLine line = new JointLine(5, 5, 0);

        assertThat(line.residualAcceleration(1000).value()).isZero();
        assertThat(line.middleShaftAcceleration(1000).value()).isCloseTo(83.620226, within(1e-4));
        assertThat(line.figures(1000)).hasSize(6);
    }

    @Test
    void nonsense_is_refused() {
        assertThatThrownBy(() -> new JointLine(5, 60, 0)).hasMessage("joint angle: 60.0 deg cannot be; give 0 to 45");
        assertThatThrownBy(() -> new JointLine(5, 3, Double.NaN))
                .hasMessage("phase error: NaN deg cannot be; give -180 to 180, 0 where the yokes are in phase");
    }

    @Property
    void no_point_of_the_turn_is_steeper_than_the_peak(
            @ForAll @DoubleRange(min = 0.1, max = 40) double angle,
            @ForAll @DoubleRange(min = 0, max = 180) double input) {
        UniversalJoint joint = new UniversalJoint(angle);
        double speed = 1000 * Math.PI / 30;
        double step = Math.toDegrees(1e-5);

        double slope = (joint.ratioAt(input + step) - joint.ratioAt(input - step)) / 2e-5;

        assertThat(Math.abs(slope) * speed * speed)
                .isLessThanOrEqualTo(joint.peakAcceleration(1000).value() * (1 + 1e-6) + 1e-3);
    }
}
