package witnessmark.gearbox.driveline;

import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.Unit;

/**
 * Two universal joints with a shaft between.
 *
 * @param firstDegrees angle of the joint at the gearbox
 * @param secondDegrees angle of the joint at the axle
 * @param phaseErrorDegrees how far the yokes are turned from where the two joints cancel: 0 in phase, 90 a quarter turn
 *     out, where they add
 */
public record JointLine(double firstDegrees, double secondDegrees, double phaseErrorDegrees) {

    /** Speed ripple that driveshaft makers recommend to stay under; public guidance, verify for the line at hand. */
    public static final double RIPPLE_LIMIT = 0.0027;

    public static final double IN_PHASE = 0;
    public static final double QUARTER_TURN_OUT = 90;

    public JointLine {
        new UniversalJoint(firstDegrees);
        new UniversalJoint(secondDegrees);
        if (!(Math.abs(phaseErrorDegrees) <= 180)) {
            throw new QuestionRefused("phase error: " + phaseErrorDegrees
                    + " deg cannot be; give -180 to 180, 0 where the yokes are in phase");
        }
    }

    /** Angle of the one joint that would ripple as the two together do; small-angle form. */
    public Figure residualAngle() {
        double b1 = firstDegrees * firstDegrees;
        double b2 = secondDegrees * secondDegrees;
        return Figure.computed(
                Math.sqrt(combined(b1, b2)),
                Unit.DEGREE,
                "b_eq = sqrt|b1^2 - b2^2| in phase, sqrt(b1^2 + b2^2) a quarter turn out");
    }

    /** The same by the squares of the sines, closer at large angles. */
    public Figure residualAngleBySines() {
        double s1 = Math.sin(Math.toRadians(firstDegrees));
        double s2 = Math.sin(Math.toRadians(secondDegrees));
        return Figure.computed(
                Math.toDegrees(Math.asin(Math.sqrt(combined(s1 * s1, s2 * s2)))),
                Unit.DEGREE,
                "sin^2 b_eq = |sin^2 b1 - sin^2 b2| in phase, the sum a quarter turn out");
    }

    /** Each joint's ripple is a wave twice per turn; the two add as such, apart by twice the phase error. */
    private double combined(double first, double second) {
        double out = Math.sin(Math.toRadians(phaseErrorDegrees));
        return Math.hypot(first - second, 2 * Math.sqrt(first * second) * out);
    }

    private UniversalJoint residual() {
        return new UniversalJoint(Math.min(45, residualAngle().value()));
    }

    /** Speed ripple left at the axle. */
    public Figure residualRipple() {
        return residual().ripple();
    }

    public Figure residualAcceleration(double rpm) {
        return residual().peakAcceleration(rpm);
    }

    /** Acceleration of the shaft between, which no second joint cancels. */
    public Figure middleShaftAcceleration(double rpm) {
        return new UniversalJoint(firstDegrees).peakAcceleration(rpm);
    }

    public boolean withinGuidance() {
        return residualRipple().value() <= RIPPLE_LIMIT;
    }

    /** Every figure by its name at a driveline speed. */
    public Map<String, Figure> figures(double rpm) {
        Map<String, Figure> figures = new LinkedHashMap<>();
        figures.put("ripple of the first joint", new UniversalJoint(firstDegrees).ripple());
        figures.put("ripple of the second joint", new UniversalJoint(secondDegrees).ripple());
        figures.put("acceleration of the shaft between", middleShaftAcceleration(rpm));
        figures.put("residual angle", residualAngle());
        figures.put("residual ripple", residualRipple());
        figures.put("residual acceleration", residualAcceleration(rpm));
        return figures;
    }
}
