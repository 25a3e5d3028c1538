package witnessmark.gearbox.driveline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.gearbox.Figure;

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

    /** A published Cardan joint example, 20 degrees at 500 rpm: 469.85 to 532 rpm; recomputed 469.846 and 532.089. */
    @Test
    void a_textbook_joint_of_twenty_degrees_at_500_rpm() {
        UniversalJoint joint = new UniversalJoint(20);

        assertThat(500 * joint.leastRatio().value()).isCloseTo(469.85, within(0.005));
        assertThat(500 * joint.greatestRatio().value()).isCloseTo(532, within(0.1));
        assertThat(500 * joint.greatestRatio().value()).isCloseTo(532.0889, within(1e-4));
    }

    /**
     * Textbooks (from memory): in phase cos b_eq is the ratio of the cosines, a quarter turn out their product; and for
     * small angles b_eq = sqrt|b1^2 - b2^2| or the sum. Figures recomputed.
     */
    @Test
    void two_joints_cancel_or_add_with_their_phase() {
        assertThat(new JointLine(3, 3, 0).residualAngle().value()).isZero();
        assertThat(cosine(new JointLine(5, 3, 0))).isCloseTo(cosine(5) / cosine(3), within(1e-12));
        assertThat(cosine(new JointLine(5, 3, 90))).isCloseTo(cosine(5) * cosine(3), within(1e-12));
        assertThat(new JointLine(5, 3, 0).residualAngle().value()).isCloseTo(4, within(0.005));
        assertThat(new JointLine(5, 3, 90).residualAngle().value()).isCloseTo(5.830952, within(0.005));
        assertThat(new JointLine(5, 3, 45).residualAngle().value()).isBetween(4.0, 5.830952);
        // Two of 45 degrees a quarter turn out turn the axle like one of 60: cos 60 = 1/2.
        assertThat(new JointLine(45, 45, 90).residualAngle().value()).isCloseTo(60, within(1e-9));
    }

    private static double cosine(JointLine line) {
        return cosine(line.residualAngle().value());
    }

    private static double cosine(double degrees) {
        return Math.cos(Math.toRadians(degrees));
    }

    /** The turn of the axle followed joint by joint, each by tan(out) = tan(in) over or times cos b (handbooks). */
    @Property
    void the_residual_ripple_is_that_of_the_turn_followed_through_both_joints(
            @ForAll @DoubleRange(min = 0, max = 45) double first,
            @ForAll @DoubleRange(min = 0, max = 45) double second,
            @ForAll @DoubleRange(min = -180, max = 180) double phase) {
        double most = 0;
        double least = Double.POSITIVE_INFINITY;
        for (double turn = 0; turn < 180; turn += 0.05) {
            double speed = speedAt(turn, first, second, phase);
            most = Math.max(most, speed);
            least = Math.min(least, speed);
        }

        assertThat(new JointLine(first, second, phase).residualRipple().value()).isCloseTo(most - least, within(1e-5));
    }

    private static double speedAt(double turn, double first, double second, double phase) {
        double half = 1e-4;
        double after = through(through(turn + half, cosine(first)) + phase, 1 / cosine(second));
        double before = through(through(turn - half, cosine(first)) + phase, 1 / cosine(second));
        return Math.IEEEremainder(after - before, 360) / (2 * half);
    }

    private static double through(double turn, double factor) {
        double radians = Math.toRadians(turn);
        return Math.toDegrees(Math.atan2(Math.sin(radians), factor * Math.cos(radians)));
    }

    /** A driveline maker's public text advises a ripple of 0.0027 at most, which is 2.976506 degrees; recomputed. */
    @Test
    void the_usual_ripple_ends_just_under_three_degrees() {
        assertThat(new UniversalJoint(2.9765).concerns(500)).isEmpty();
        assertThat(new UniversalJoint(2.9766).concerns(500)).containsExactly(Guidance.RIPPLE);
        assertThat(new JointLine(2.9765, 0, 0).concerns(500)).doesNotContain(Guidance.RIPPLE);
        assertThat(new JointLine(2.9766, 0, 0).concerns(500)).contains(Guidance.RIPPLE);
    }

    /**
     * A driveshaft maker's public table of the largest working angle by speed stands for 1000 rad/s2, the usual value (from
     * memory): where it says 7.0 degrees at 2500 rpm and 5.0 at 3500, w^2 sin^2 b comes to 1018 and 1020.
     */
    @ParameterizedTest
    @CsvSource({"2500, 7.0", "3500, 5.0", "2000, 8.7", "3000, 5.8"})
    void the_makers_table_of_angle_by_speed_is_the_bound_of_acceleration(double rpm, double degrees) {
        assertThat(new UniversalJoint(degrees).peakAcceleration(rpm).value()).isCloseTo(1000, within(40.0));
    }

    /** 20 degrees cancel in phase but shake the shaft between with 5,482 rad/s2 at 2000 rpm; recomputed. */
    @ParameterizedTest
    @CsvSource({"45, 34530", "12, 1939", "20, 5482"})
    void equal_angles_do_not_spare_the_shaft_between(double degrees, double acceleration) {
        JointLine line = new JointLine(degrees, degrees, 0);

        assertThat(line.residualAcceleration(2000).value()).isZero();
        assertThat(line.driveAcceleration(2000).value()).isCloseTo(acceleration, within(acceleration * 1e-3));
        assertThat(line.concerns(2000))
                .containsExactly(Guidance.DRIVE_SIDE, Guidance.DRIVEN_SIDE, Guidance.LARGE_ANGLE);
        assertThat(Guidance.Verdict.of(line.concerns(2000))).isEqualTo(Guidance.Verdict.BEYOND);
    }

    /** w^2 sin^2 b = 1000 at 2000 rpm: sin b = sqrt(1000) / 209.44, b = 8.685 degrees; the exact form 8.6339. */
    @Test
    void each_side_is_judged_by_its_own_acceleration() {
        assertThat(new JointLine(8.63, 8.63, 0).concerns(2000)).containsExactly(Guidance.LARGE_ANGLE);
        assertThat(new JointLine(8.64, 8.63, 0).concerns(2000))
                .contains(Guidance.DRIVE_SIDE)
                .doesNotContain(Guidance.DRIVEN_SIDE);
        assertThat(new JointLine(8.63, 8.64, 0).concerns(2000))
                .contains(Guidance.DRIVEN_SIDE)
                .doesNotContain(Guidance.DRIVE_SIDE);
        assertThat(Guidance.Verdict.of(new JointLine(8.63, 8.63, 0).concerns(2000)))
                .isEqualTo(Guidance.Verdict.LOOK);
    }

    /** Public rules of a driveshaft maker: half a degree at least, three at most, within one degree of each other. */
    @ParameterizedTest
    @CsvSource({
        "0.5, 1.0, WITHIN, ",
        "0.49, 1.0, LOOK, STRAIGHT_JOINT",
        "0, 0, LOOK, STRAIGHT_JOINT",
        "3, 3, WITHIN, ",
        "3.01, 3.0, LOOK, LARGE_ANGLE",
        "1, 2, WITHIN, ",
        "1, 2.01, LOOK, UNEQUAL_ANGLES",
        "1, 4, BEYOND, RIPPLE"
    })
    void working_angles_are_judged_each_by_itself(
            double first, double second, Guidance.Verdict verdict, Guidance concern) {
        var concerns = new JointLine(first, second, 0).concerns(1000);

        assertThat(Guidance.Verdict.of(concerns)).isEqualTo(verdict);
        if (concern != null) {
            assertThat(concerns).contains(concern);
        }
    }

    /** A straight joint turns evenly; the table above goes to 45 degrees of turn as the angle goes to nothing. */
    @Test
    void the_peak_of_a_straight_joint_is_at_the_limit_of_the_table() {
        assertThat(new UniversalJoint(0).peakDegrees()).isEqualTo(45);
        assertThat(new UniversalJoint(0).peakAcceleration(1000).value()).isZero();
    }

    /** The same table, by the names under which the figures are printed. */
    @Test
    void the_figures_printed_are_those_of_the_table() {
        assertThat(values(new UniversalJoint(10).figures(1000)))
                .containsExactly(
                        entry("least speed over input speed", "0.98481"),
                        entry("greatest speed over input speed", "1.01543"),
                        entry("ripple, greatest less least", "0.03062"),
                        entry("peak acceleration", "335.85204"),
                        entry("greatest lead or lag", "0.43856"));
        assertThat(values(new JointLine(8, 3, 0).figures(1000)))
                .contains(
                        entry("ripple of the first joint", "0.01956"),
                        entry("ripple of the second joint", "0.00274"),
                        entry("acceleration by the first joint", "214.51447"),
                        entry("acceleration by the second joint", "30.07835"))
                .containsKeys("residual ripple", "residual angle", "residual acceleration");
    }

    private static Map<String, String> values(Map<String, Figure> figures) {
        Map<String, String> values = new LinkedHashMap<>();
        figures.forEach((name, figure) -> values.put(name, String.format(Locale.ROOT, "%.5f", figure.value())));
        return values;
    }

    /** What is said of a concern names the bound that it was judged by. */
    @Test
    void each_concern_says_its_bound() {
        assertThat(Guidance.RIPPLE.words()).contains(String.valueOf(Guidance.MOST_RIPPLE));
        assertThat(Guidance.DRIVE_SIDE.words()).contains("at the gearbox", "1000 rad/s2");
        assertThat(Guidance.DRIVEN_SIDE.words()).contains("at the axle", "1000 rad/s2");
        assertThat(Guidance.LARGE_ANGLE.words()).contains("3 degrees");
        assertThat(Guidance.STRAIGHT_JOINT.words()).contains("half a degree");
        assertThat(Guidance.UNEQUAL_ANGLES.words()).contains("more than a degree apart");
        assertThat(Guidance.Verdict.WITHIN.words()).startsWith("Within");
        assertThat(Guidance.Verdict.LOOK.words()).startsWith("Off");
        assertThat(Guidance.Verdict.BEYOND.words()).startsWith("Beyond");
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
