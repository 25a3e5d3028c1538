package witnessmark.gearbox.shift;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/**
 * A friction cone.
 *
 * @param friction coefficient of friction
 * @param forceNewton axial push
 * @param meanRadiusMetres mean radius of the cone
 * @param halfAngleDegrees half the cone's angle
 */
public record ConeClutch(double friction, double forceNewton, double meanRadiusMetres, double halfAngleDegrees) {

    static ConeClutch of(TruckProfile truck) {
        return new ConeClutch(
                truck.value(Parameter.CONE_FRICTION),
                truck.value(Parameter.PISTON_FORCE),
                truck.value(Parameter.CONE_RADIUS) / 1000,
                truck.value(Parameter.CONE_ANGLE));
    }

    /** Friction torque, uniform wear (cone clutch of machine design textbooks, from memory). */
    public Figure torque() {
        double newtonMetres = friction * forceNewton * meanRadiusMetres / Math.sin(Math.toRadians(halfAngleDegrees));
        return Figure.computed(newtonMetres, Unit.NEWTON_METRE, "T = mu F r_mean / (1000 sin(half_angle))");
    }

    /** Half angle at and below which the cone sticks once pressed in. */
    public Figure lockingAngle() {
        return Figure.computed(Math.toDegrees(Math.atan(friction)), Unit.DEGREE, "atan(mu)");
    }

    public boolean sticks() {
        return halfAngleDegrees <= lockingAngle().value();
    }
}
