package witnessmark.gearbox.shift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConeAndSlipTest {

    private static final double CHANGE = Slip.radPerSecond(500);
    private static final double TORQUE = 110.7743721;

    /** Cone clutch, uniform wear: T = mu F d_m / (2 sin a), as public cone clutch pages give it; recomputed. */
    @ParameterizedTest
    @CsvSource({"0.10, 1000, 60, 6.5, 53.00202883", "0.12, 1500, 75, 7.0, 110.7743721"})
    void cone_torque_agrees_with_the_textbook_formula(
            double friction, double force, double radiusMm, double angle, double expected) {
        assertThat(new ConeClutch(friction, force, radiusMm / 1000, angle)
                        .torque()
                        .value())
                .isCloseTo(expected, within(expected * 1e-6));
    }

    /**
     * A published cone clutch example: 745 N, friction 0.22, mean radius 145 mm, half angle 6.5 degrees give about 210 Nm;
     * recomputed 209.9. (The page takes face width for face times sine; only its last step is used.) Largest radius and width
     * done right, 172.0758 mm and 180 mm: 613.8315716 N for the 210 Nm; recomputed.
     */
    @Test
    void a_published_cone_clutch() {
        assertThat(new ConeClutch(0.22, 745, 0.145, 6.5).torque().value()).isCloseTo(210, within(0.2));
        assertThat(new ConeClutch(0.22, 613.8315716, (0.180 + 0.1720758) / 2, 6.5)
                        .torque()
                        .value())
                .isCloseTo(210, within(1e-3));
    }

    /** J 0.02 + 0.05 x 1.2^2 + 0.03 x 2.5^2 = 0.2795 kg m2 referred to one shaft: by hand, formula of textbooks. */
    @Test
    void an_inertia_behind_a_ratio_counts_by_its_square() {
        assertThat(new Slip(0.02 + 0.05 * 1.44 + 0.03 * 6.25, 100, 50, 0)
                        .energy()
                        .value())
                .isCloseTo(0.2795 * 5, within(1e-12));
    }

    /**
     * Two free bodies, 54.08 and 68.34375 kg m2 at 130.8997 and 62.8319 rad/s, 12.90625 Nm: a public worked answer gives
     * 69,948 J (a rounded difference) and 159.22 s; recomputed 69,939.6 J and 159.225 s. The second, 4 and 2 kg m2, 60 rpm
     * and rest, 10 Nm: 26.319 J and 0.83776 s, recomputed.
     */
    @ParameterizedTest
    @CsvSource({
        "54.08, 68.34375, 130.8997, 62.8319, 12.90625, 69939.61573, 159.2250706",
        "4, 2, 6.283185307, 0, 10, 26.31894507, 0.8377580410"
    })
    void two_free_bodies_slip_like_one_of_their_joint_inertia(
            double first, double second, double fast, double slow, double torque, double joule, double seconds) {
        Slip slip = new Slip(first * second / (first + second), fast - slow, torque, 0);

        assertThat(1000 * slip.energy().value()).isCloseTo(joule, within(joule * 1e-5));
        assertThat(slip.time().orElseThrow().value()).isCloseTo(seconds, within(seconds * 1e-5));
    }

    /** A cone locks where tan a = mu: arc tangents, recomputed. */
    @ParameterizedTest
    @CsvSource({"0.10, 5.710593137, 5.7, true", "0.12, 6.842773413, 7.0, false"})
    void a_flat_cone_sticks(double friction, double lockingAngle, double angle, boolean sticks) {
        ConeClutch cone = new ConeClutch(friction, 1000, 0.06, angle);

        assertThat(cone.lockingAngle().value()).isCloseTo(lockingAngle, within(1e-8));
        assertThat(cone.sticks()).isEqualTo(sticks);
    }

    /** Shigley, energy considerations of a clutch (formula from memory); recomputed. */
    @ParameterizedTest
    @CsvSource({"0, 0.05672056799, 164.4934067", "8, 0.05290017698, 153.4140195", "-8, 0.06113572066, 177.2976421"})
    void drag_helps_an_upshift_and_hinders_a_downshift(double helpingDrag, double seconds, double joule) {
        Slip slip = new Slip(0.12, CHANGE, TORQUE, helpingDrag);

        assertThat(slip.time().orElseThrow().value()).isCloseTo(seconds, within(seconds * 1e-6));
        assertThat(1000 * slip.energyWithDrag().orElseThrow().value()).isCloseTo(joule, within(joule * 1e-6));
        assertThat(1000 * slip.energy().value()).isCloseTo(164.4934067, within(1e-4));
    }

    @Test
    void a_cone_weaker_than_the_drag_never_finishes() {
        Slip slip = new Slip(0.12, CHANGE, 7, -8);

        assertThat(slip.time()).isEmpty();
        assertThat(slip.energyWithDrag()).isEmpty();
    }
}
