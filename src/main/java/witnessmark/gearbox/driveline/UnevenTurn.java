package witnessmark.gearbox.driveline;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;

/**
 * How a shaft turns behind one universal joint, or behind two, which turn it as one joint of some other angle would.
 * Kinematics of the Cardan joint, derived; mechanics handbooks give the like.
 *
 * @param degrees angle of that one joint, 0 to below 90
 */
record UnevenTurn(double degrees) {

    private double radians() {
        return Math.toRadians(degrees);
    }

    private double sineSquared() {
        double sine = Math.sin(radians());
        return sine * sine;
    }

    double ratioAt(double inputDegrees) {
        double cosine = Math.cos(Math.toRadians(inputDegrees));
        return Math.cos(radians()) / (1 - sineSquared() * cosine * cosine);
    }

    /** Greatest less least ratio. */
    double ripple() {
        return Math.sin(radians()) * Math.tan(radians());
    }

    /** Input angle, from where the ratio is greatest, at which the acceleration peaks; 45 for a straight joint. */
    double peakDegrees() {
        double s = sineSquared();
        if (s == 0) {
            return 45;
        }
        double k = (2 - s) / s;
        // (sqrt(k^2+8) - k)/2 written so that small angles lose no digits.
        return Math.toDegrees(Math.acos(4 / (Math.sqrt(k * k + 8) + k))) / 2;
    }

    /**
     * Greatest angular acceleration of the driven shaft, twice per turn.
     *
     * @param angle the letter that the formula has for the angle: b
     * @param result the letter that it has for the acceleration
     */
    Figure peakAcceleration(double inputRpm, String angle, String result) {
        double speed = inputRpm * Math.PI / 30;
        double twice = Math.toRadians(2 * peakDegrees());
        double below = 1 - sineSquared() * (1 + Math.cos(twice)) / 2;
        double value = speed * speed * Math.cos(radians()) * sineSquared() * Math.sin(twice) / (below * below);
        String formula = sineSquared() == 0
                ? "%r = 0; a straight joint turns evenly"
                : "%r = (2 pi n / 60)^2 cos(%b) sin(%b)^2 sin(2 g) / (1 - sin(%b)^2 cos(g)^2)^2"
                        + " where g = acos(4 / (k + sqrt(k^2 + 8))) / 2, k = (2 - sin(%b)^2) / sin(%b)^2; g is the turn"
                        + " at which it peaks";
        return Figure.computed(
                value,
                Unit.RADIAN_PER_SECOND_SQUARED,
                formula.replace("%r", result).replace("%b", angle));
    }
}
