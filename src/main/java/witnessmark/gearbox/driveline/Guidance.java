package witnessmark.gearbox.driveline;

import java.util.ArrayList;
import java.util.List;

/**
 * What the usual guidance for a driveline can object to. The bounds are public guidance of driveshaft makers and stand in
 * for the limit of the line at hand, which decides.
 */
public enum Guidance {
    RIPPLE(Weight.HARM, "more unevenness is left at the driven end than driveshaft makers advise, a ripple of 0.0027"),
    DRIVE_SIDE(
            Weight.HARM,
            "the joint at the gearbox shakes the shaft behind it with more than 1000 rad/s2, whatever the other joint"
                    + " does"),
    DRIVEN_SIDE(
            Weight.HARM,
            "the joint at the axle shakes the shaft before it with more than 1000 rad/s2, whatever the other joint does"),
    LARGE_ANGLE(
            Weight.RULE_OF_THUMB, "a joint works at more than 3 degrees: see the maker's table of angle against speed"),
    STRAIGHT_JOINT(
            Weight.RULE_OF_THUMB,
            "a joint works at less than half a degree: its needles do not roll and mark the cross, so give it half a"
                    + " degree to one at least"),
    UNEQUAL_ANGLES(Weight.RULE_OF_THUMB, "the two angles are more than a degree apart");

    /** Where the bounds come from, in a sentence. */
    public static final String SOURCE =
            "Bounds: a ripple of 0.0027, and angles of 0.5 to 3 degrees within a degree of each other, are public guidance"
                    + " of driveshaft makers; 1000 rad/s2 is a usual value, from memory, and what their table of angle"
                    + " against speed comes to";

    /** Speed ripple to stay under: a driveline maker's public text. */
    public static final double MOST_RIPPLE = 0.0027;
    /**
     * Inertia acceleration to stay under, rad/s2: usual value, from memory; a driveshaft maker's public table of greatest
     * angle by speed (3500 rpm 5.0 degrees, 2500 rpm 7.0, 2000 rpm 8.7) comes to the same.
     */
    public static final double MOST_ACCELERATION = 1000;
    /** Largest working angle without a look at the maker's table: a driveshaft maker's public rules. */
    public static final double MOST_DEGREES = 3;
    /** Smallest working angle, so that the needles roll: the same rules. */
    public static final double LEAST_DEGREES = 0.5;
    /** Most that the two angles of a shaft may differ: the same rules. */
    public static final double MOST_APART_DEGREES = 1;
    /** For angles that a protractor tells to a quarter of a degree, a figure typed just on a bound is within it. */
    private static final double SLACK = 1e-9;

    private enum Weight {
        HARM,
        RULE_OF_THUMB
    }

    private final Weight weight;
    private final String words;

    Guidance(Weight weight, String words) {
        this.weight = weight;
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** Whether the line runs beyond what it bears, or only off a rule of thumb that its maker's table may settle. */
    public boolean harmful() {
        return weight == Weight.HARM;
    }

    static List<Guidance> ofJoint(UniversalJoint joint, double rpm, Guidance side) {
        List<Guidance> concerns = new ArrayList<>();
        if (joint.peakAcceleration(rpm).value() > MOST_ACCELERATION) {
            concerns.add(side);
        }
        if (joint.angleDegrees() > MOST_DEGREES + SLACK) {
            concerns.add(LARGE_ANGLE);
        }
        if (joint.angleDegrees() < LEAST_DEGREES - SLACK) {
            concerns.add(STRAIGHT_JOINT);
        }
        return concerns;
    }

    static boolean unequal(double firstDegrees, double secondDegrees) {
        return Math.abs(firstDegrees - secondDegrees) > MOST_APART_DEGREES + SLACK;
    }

    /** What is to be said of a line by its concerns. */
    public enum Verdict {
        WITHIN("Within the usual guidance; the driveline maker's own limit decides"),
        LOOK("Off the usual guidance; the driveline maker's table for angle and speed decides"),
        BEYOND("Beyond the usual guidance; check angles and phasing against the driveline maker's limit");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        public static Verdict of(List<Guidance> concerns) {
            if (concerns.isEmpty()) {
                return WITHIN;
            }
            return concerns.stream().anyMatch(Guidance::harmful) ? BEYOND : LOOK;
        }
    }
}
