package witnessmark.gearbox.driveline;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.Unit;

/**
 * One universal joint whose input turns evenly. Kinematics of the Cardan joint, derived; mechanics handbooks give the
 * like.
 *
 * @param angleDegrees between the two shafts, 0 to 45
 */
public record UniversalJoint(double angleDegrees) {

    public UniversalJoint {
        if (!(angleDegrees >= 0 && angleDegrees <= 45)) {
            throw new QuestionRefused("joint angle: " + angleDegrees + " deg cannot be; give 0 to 45");
        }
    }

    private double sineSquared() {
        double sine = Math.sin(Math.toRadians(angleDegrees));
        return sine * sine;
    }

    /** Output speed over input speed, with the input's turn counted from where it is greatest. */
    public double ratioAt(double inputDegrees) {
        double cosine = Math.cos(Math.toRadians(inputDegrees));
        return Math.cos(Math.toRadians(angleDegrees)) / (1 - sineSquared() * cosine * cosine);
    }

    public Figure greatestRatio() {
        return Figure.computed(1 / Math.cos(Math.toRadians(angleDegrees)), Unit.RATIO, "1 / cos b");
    }

    public Figure leastRatio() {
        return Figure.computed(Math.cos(Math.toRadians(angleDegrees)), Unit.RATIO, "cos b");
    }

    /** Speed ripple: greatest less least ratio. */
    public Figure ripple() {
        double radians = Math.toRadians(angleDegrees);
        return Figure.computed(Math.sin(radians) * Math.tan(radians), Unit.RATIO, "U = 1/cos b - cos b = sin b tan b");
    }

    /** Input angle, from where the ratio is greatest, at which the acceleration peaks; 45 for a straight joint. */
    public double peakDegrees() {
        double s = sineSquared();
        if (s == 0) {
            return 45;
        }
        double k = (2 - s) / s;
        // (sqrt(k^2+8) - k)/2 written so that small angles lose no digits.
        return Math.toDegrees(Math.acos(4 / (Math.sqrt(k * k + 8) + k))) / 2;
    }

    /** Greatest angular acceleration of the driven shaft, twice per turn. */
    public Figure peakAcceleration(double inputRpm) {
        double speed = inputRpm * Math.PI / 30;
        double twice = Math.toRadians(2 * peakDegrees());
        double cosineSquared = (1 + Math.cos(twice)) / 2;
        double below = 1 - sineSquared() * cosineSquared;
        double value = speed
                * speed
                * Math.cos(Math.toRadians(angleDegrees))
                * sineSquared()
                * Math.sin(twice)
                / (below * below);
        return Figure.computed(
                value,
                Unit.RADIAN_PER_SECOND_SQUARED,
                "a = w^2 cos b sin^2 b sin 2g / (1 - sin^2 b cos^2 g)^2 at its peak: cos 2g = (sqrt(k^2+8) - k)/2,"
                        + " k = (2 - sin^2 b)/sin^2 b");
    }

    /** Furthest that the driven shaft runs ahead of or behind the driving one. */
    public Figure greatestLead() {
        double cosine = Math.cos(Math.toRadians(angleDegrees));
        return Figure.computed(
                Math.toDegrees(Math.atan((1 - cosine) / (2 * Math.sqrt(cosine)))),
                Unit.DEGREE,
                "atan((1 - cos b) / (2 sqrt(cos b)))");
    }
}
