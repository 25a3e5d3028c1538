package witnessmark.gearbox.driveline;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.Unit;

/**
 * One universal joint whose input turns evenly.
 *
 * @param angleDegrees between the two shafts, 0 to 45
 */
public record UniversalJoint(double angleDegrees) {

    public UniversalJoint {
        if (!(angleDegrees >= 0 && angleDegrees <= 45)) {
            throw new QuestionRefused("joint angle: " + angleDegrees + " deg cannot be", "give 0 to 45");
        }
    }

    private UnevenTurn turn() {
        return new UnevenTurn(angleDegrees);
    }

    /** Output speed over input speed, with the input's turn counted from where it is greatest. */
    public double ratioAt(double inputDegrees) {
        return turn().ratioAt(inputDegrees);
    }

    public Figure greatestRatio() {
        return Figure.computed(1 / Math.cos(Math.toRadians(angleDegrees)), Unit.RATIO, "1 / cos(b)");
    }

    public Figure leastRatio() {
        return Figure.computed(Math.cos(Math.toRadians(angleDegrees)), Unit.RATIO, "cos(b)");
    }

    /** Speed ripple: greatest less least ratio. */
    public Figure ripple() {
        return Figure.computed(turn().ripple(), Unit.RATIO, "U = sin(b) tan(b)");
    }

    /** Input angle, from where the ratio is greatest, at which the acceleration peaks; 45 for a straight joint. */
    public double peakDegrees() {
        return turn().peakDegrees();
    }

    /** Greatest angular acceleration of the driven shaft, twice per turn. */
    public Figure peakAcceleration(double inputRpm) {
        return turn().peakAcceleration(inputRpm, "b", "a");
    }

    /** Furthest that the driven shaft runs ahead of or behind the driving one. */
    public Figure greatestLead() {
        double cosine = Math.cos(Math.toRadians(angleDegrees));
        return Figure.computed(
                Math.toDegrees(Math.atan((1 - cosine) / (2 * Math.sqrt(cosine)))),
                Unit.DEGREE,
                "atan((1 - cos(b)) / (2 sqrt(cos(b))))");
    }

    /** What the usual guidance objects to at a driveline speed, where no second joint cancels this one. */
    public List<Guidance> concerns(double rpm) {
        return Stream.concat(
                        ripple().value() > Guidance.MOST_RIPPLE ? Stream.of(Guidance.RIPPLE) : Stream.empty(),
                        Guidance.ofJoint(this, rpm, Guidance.DRIVE_SIDE).stream())
                .toList();
    }

    /** Every figure by its name at a driveline speed. */
    public Map<String, Figure> figures(double rpm) {
        Map<String, Figure> figures = new LinkedHashMap<>();
        figures.put("least speed over input speed", leastRatio());
        figures.put("greatest speed over input speed", greatestRatio());
        figures.put("ripple, greatest less least", ripple());
        figures.put("peak acceleration", peakAcceleration(rpm));
        figures.put("greatest lead or lag", greatestLead());
        return figures;
    }
}
