package witnessmark.gearbox.driveline;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.Unit;

/**
 * Two universal joints with a shaft between. Each joint maps the tangent of the turn by a factor, and the phase error
 * turns it: the product of the three maps is again the map of one joint, whose angle follows exactly (derived).
 *
 * @param firstDegrees angle of the joint at the gearbox
 * @param secondDegrees angle of the joint at the axle
 * @param phaseErrorDegrees how far the yokes are turned from where the two joints cancel: 0 in phase, 90 a quarter turn
 *     out, where they add
 */
public record JointLine(double firstDegrees, double secondDegrees, double phaseErrorDegrees) {

    public static final double IN_PHASE = 0;
    public static final double QUARTER_TURN_OUT = 90;

    public JointLine {
        new UniversalJoint(firstDegrees);
        new UniversalJoint(secondDegrees);
        if (!(Math.abs(phaseErrorDegrees) <= 180)) {
            throw new QuestionRefused(
                    "phase error: " + phaseErrorDegrees + " deg cannot be",
                    "give -180 to 180, 0 where the yokes are in phase");
        }
    }

    private UniversalJoint first() {
        return new UniversalJoint(firstDegrees);
    }

    private UniversalJoint second() {
        return new UniversalJoint(secondDegrees);
    }

    /** Speed ripple left at the axle, greatest less least speed over the input's. */
    public Figure residualRipple() {
        double k = unevenness();
        return Figure.computed(
                Math.sqrt(k * (k + 4)),
                Unit.RATIO,
                "U = sqrt(K (K + 4)) where K = ((cos(b1) - cos(b2))^2 cos(phase)^2"
                        + " + (1 - cos(b1) cos(b2))^2 sin(phase)^2) / (cos(b1) cos(b2))");
    }

    /** Greatest plus least speed over the input's, less the 2 of an even turn. */
    private double unevenness() {
        double b1 = Math.toRadians(firstDegrees);
        double b2 = Math.toRadians(secondDegrees);
        // Half a turn brings a joint back to where it was; taken off in degrees, 180 is no phase error at all.
        double out = Math.toRadians(Math.IEEEremainder(phaseErrorDegrees, 180));
        // The difference of the cosines written as a product, so that small angles lose no digits.
        double apart = -2 * Math.sin((b1 + b2) / 2) * Math.sin((b1 - b2) / 2) * Math.cos(out);
        double added = (1 - Math.cos(b1) * Math.cos(b2)) * Math.sin(out);
        return (apart * apart + added * added) / (Math.cos(b1) * Math.cos(b2));
    }

    /** Angle of the one joint that would turn the axle as the two together do; up to 60 degrees. */
    public Figure residualAngle() {
        return Figure.computed(
                residual().degrees(), Unit.DEGREE, "b_eq = acos((sqrt(U^2 + 4) - U) / 2); the one joint of ripple U");
    }

    private UnevenTurn residual() {
        double k = unevenness();
        double lessThanOne = (Math.sqrt(k * (k + 4)) - k) / 2;
        return new UnevenTurn(Math.toDegrees(2 * Math.asin(Math.sqrt(lessThanOne / 2))));
    }

    public Figure residualAcceleration(double rpm) {
        return residual().peakAcceleration(rpm, "b_eq", "a_eq");
    }

    /** Acceleration that the joint at the gearbox gives the shaft between, which no second joint cancels. */
    public Figure driveAcceleration(double rpm) {
        return new UnevenTurn(firstDegrees).peakAcceleration(rpm, "b1", "a1");
    }

    /** The same by the joint at the axle, counted from an axle that turns evenly. */
    public Figure drivenAcceleration(double rpm) {
        return new UnevenTurn(secondDegrees).peakAcceleration(rpm, "b2", "a2");
    }

    /** What the usual guidance objects to at a driveline speed; empty where it objects to nothing. */
    public List<Guidance> concerns(double rpm) {
        List<Guidance> concerns = new ArrayList<>();
        if (residualRipple().value() > Guidance.MOST_RIPPLE) {
            concerns.add(Guidance.RIPPLE);
        }
        concerns.addAll(Guidance.ofJoint(first(), rpm, Guidance.DRIVE_SIDE));
        concerns.addAll(Guidance.ofJoint(second(), rpm, Guidance.DRIVEN_SIDE));
        if (Guidance.unequal(firstDegrees, secondDegrees)) {
            concerns.add(Guidance.UNEQUAL_ANGLES);
        }
        return concerns.stream().distinct().sorted().toList();
    }

    /** Every figure by its name at a driveline speed. */
    public Map<String, Figure> figures(double rpm) {
        Map<String, Figure> figures = new LinkedHashMap<>();
        figures.put("ripple of the first joint", ripple(first(), "sin(b1) tan(b1)"));
        figures.put("ripple of the second joint", ripple(second(), "sin(b2) tan(b2)"));
        figures.put("acceleration by the first joint", driveAcceleration(rpm));
        figures.put("acceleration by the second joint", drivenAcceleration(rpm));
        figures.put("residual ripple", residualRipple());
        figures.put("residual angle", residualAngle());
        figures.put("residual acceleration", residualAcceleration(rpm));
        return figures;
    }

    private static Figure ripple(UniversalJoint joint, String formula) {
        return Figure.computed(joint.ripple().value(), Unit.RATIO, formula);
    }
}
