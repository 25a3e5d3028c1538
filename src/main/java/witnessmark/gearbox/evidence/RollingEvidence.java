package witnessmark.gearbox.evidence;

import static witnessmark.gearbox.evidence.ComputedFinding.presentIf;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.driveline.Guidance;
import witnessmark.gearbox.driveline.JointLine;
import witnessmark.gearbox.evidence.ComputedFinding.Kind;
import witnessmark.gearbox.evidence.ComputedFinding.State;
import witnessmark.gearbox.exposure.Exposure;

/** Findings from a coast, a tow or a driveline as it was measured. */
public final class RollingEvidence {

    private RollingEvidence() {}

    /** Held against the program's own bound. */
    public static ComputedFinding of(TruckProfile truck, Exposure exposure) {
        return of(truck, exposure, longSlide(exposure.mode()));
    }

    /** Sliding distance that counts as long. */
    private static Figure longSlide(Exposure.Mode mode) {
        return switch (mode) {
            case COAST -> Figure.assumed(
                    5, Unit.KILOMETRE, "judgement, with the oil throw of idle; no safe distance is known");
            case TOW -> Figure.assumed(2, Unit.KILOMETRE, "judgement, without oil throw; no safe distance is known");
        };
    }

    /** Held against a bound of one's own, in a unit of length. */
    public static ComputedFinding of(TruckProfile truck, Exposure exposure, Figure limit) {
        Exposure.Rub worst = exposure.worst();
        boolean tooLong = worst.distance().value() > limit.in(Unit.KILOMETRE).value();
        Map<String, Figure> inputs = new LinkedHashMap<>();
        inputs.put("road speed", Figure.given(exposure.journey().kmh(), Unit.KILOMETRE_PER_HOUR));
        inputs.put("time", Figure.given(exposure.journey().hours() * 60, Unit.MINUTE));
        inputs.put("distance", Figure.given(exposure.journey().km(), Unit.KILOMETRE));
        inputs.put("axle ratio", truck.figure(Parameter.AXLE_RATIO));
        inputs.put("tyre", truck.figure(Parameter.TYRE_REVS));
        inputs.put("mainshaft speed", exposure.mainshaft());
        inputs.put("idle speed", truck.figure(Parameter.IDLE_RPM));
        inputs.put("bore of the floating gears", truck.figure(Parameter.GEAR_BORE));
        boolean coast = exposure.mode() == Exposure.Mode.COAST;
        return new ComputedFinding(
                coast ? Kind.COAST_RUB_LONG : Kind.TOW_RUB_LONG,
                // No safe distance is known, so that a short slide clears nothing.
                tooLong ? State.PRESENT : State.NOT_COUNTED,
                inputs,
                worst.difference().note() + "; " + worst.speed().note() + "; "
                        + worst.distance().note(),
                worst.distance(),
                limit,
                summary(exposure, worst, limit, tooLong));
    }

    private static String summary(Exposure exposure, Exposure.Rub worst, Figure limit, boolean tooLong) {
        String what = exposure.mode() == Exposure.Mode.COAST
                ? "the reported coast let gear " + worst.lever().name() + " slide "
                : "the reported tow let every floating gear slide ";
        return what + worst.distance().text() + " on the mainshaft, "
                + (tooLong ? "above the bound of " : "under the bound of ") + limit.text()
                + (tooLong ? ": " : ", which clears nothing, for no safe distance is known: ")
                + exposure.oilThrow().words()
                + (exposure.shaft() == Exposure.ShaftSpeed.ORDINARY
                        ? ""
                        : "; at " + exposure.mainshaft().text() + ", "
                                + TimesText.times(exposure.timesOrdinary()) + " the most in ordinary driving, "
                                + exposure.shaft().words());
    }

    /** At a driveline speed: what the joints leave, or where that is little the worse of the two joints alone. */
    public static ComputedFinding of(JointLine line, double rpm) {
        Map<String, Figure> inputs = new LinkedHashMap<>();
        inputs.put("first joint", Figure.given(line.firstDegrees(), Unit.DEGREE));
        inputs.put("second joint", Figure.given(line.secondDegrees(), Unit.DEGREE));
        inputs.put("phase error", Figure.given(line.phaseErrorDegrees(), Unit.DEGREE));
        inputs.put("driveline speed", Figure.given(rpm, Unit.RPM));
        List<Guidance> concerns = line.concerns(rpm);
        boolean shaken = concerns.contains(Guidance.DRIVE_SIDE) || concerns.contains(Guidance.DRIVEN_SIDE);
        boolean byJoint = shaken && !concerns.contains(Guidance.RIPPLE);
        Figure result = byJoint ? worseJoint(line, rpm) : line.residualRipple();
        return new ComputedFinding(
                Kind.DRIVELINE_ANGLE_RIPPLE_HIGH,
                presentIf(concerns.stream().anyMatch(Guidance::harmful)),
                inputs,
                result.note(),
                result,
                byJoint
                        ? Figure.assumed(
                                Guidance.MOST_ACCELERATION,
                                Unit.RADIAN_PER_SECOND_SQUARED,
                                "usual value, from memory; verify for this line")
                        : Figure.assumed(
                                Guidance.MOST_RIPPLE,
                                Unit.RATIO,
                                "public guidance of driveline makers; verify for this line"),
                summary(line, rpm, concerns));
    }

    private static Figure worseJoint(JointLine line, double rpm) {
        return line.firstDegrees() >= line.secondDegrees() ? line.driveAcceleration(rpm) : line.drivenAcceleration(rpm);
    }

    private static String summary(JointLine line, double rpm, List<Guidance> concerns) {
        String together = "the two joints together turn the axle like one of "
                + line.residualAngle().text();
        return concerns.isEmpty()
                ? together + ", within the usual guidance, and neither shakes the shaft between too much"
                : together + ", and the worse of them shakes the shaft between with "
                        + worseJoint(line, rpm).text() + ": "
                        + concerns.stream().map(Guidance::words).collect(Collectors.joining("; "));
    }
}
