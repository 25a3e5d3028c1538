package witnessmark.gearbox.shift;

import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;

/**
 * A body brought to another speed by a friction torque while drag helps or hinders. Rigid-body mechanics, constant
 * torque (energy considerations of a clutch in machine design textbooks, from memory).
 *
 * @param inertia kg m2, referred to the shaft of the speed change
 * @param speedChange rad/s, not negative
 * @param torque friction torque, N m
 * @param helpingDrag N m; negative where drag hinders
 */
public record Slip(double inertia, double speedChange, double torque, double helpingDrag) {

    public static double radPerSecond(double rpm) {
        return rpm * Math.PI / 30;
    }

    /** Kinetic energy of the speed change; the friction energy where there is no drag. */
    public Figure energy() {
        return Figure.computed(
                inertia * speedChange * speedChange / 2000, Unit.KILOJOULE, "W = J_cone (2 pi n_cone / 60)^2 / 2000");
    }

    /** Friction energy with drag; empty where drag beats the friction torque. */
    public Optional<Figure> energyWithDrag() {
        return net().map(net ->
                Figure.computed(energy().value() * torque / net, Unit.KILOJOULE, "W_drag = W T / (T + drag)"));
    }

    /** Time of the slip; empty where drag beats the friction torque, for then it never ends. */
    public Optional<Figure> time() {
        return net().map(net -> Figure.computed(
                inertia * speedChange / net, Unit.SECOND, "t = J_cone (2 pi n_cone / 60) / (T + drag)"));
    }

    private Optional<Double> net() {
        double net = torque + helpingDrag;
        return net > 0 ? Optional.of(net) : Optional.empty();
    }
}
