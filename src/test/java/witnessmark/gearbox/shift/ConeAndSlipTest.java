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
