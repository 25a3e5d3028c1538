package witnessmark.gearbox.evidence;

import static witnessmark.gearbox.evidence.ComputedFinding.presentIf;

import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
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
                + exposure.oilThrow().words();
    }

    public static ComputedFinding of(JointLine line) {
        Map<String, Figure> inputs = new LinkedHashMap<>();
        inputs.put("first joint", Figure.given(line.firstDegrees(), Unit.DEGREE));
        inputs.put("second joint", Figure.given(line.secondDegrees(), Unit.DEGREE));
        inputs.put("phase error", Figure.given(line.phaseErrorDegrees(), Unit.DEGREE));
        return new ComputedFinding(
                Kind.DRIVELINE_ANGLE_RIPPLE_HIGH,
                presentIf(!line.withinGuidance()),
                inputs,
                line.residualAngle().note() + "; " + line.residualRipple().note(),
                line.residualRipple(),
                Figure.assumed(
                        JointLine.RIPPLE_LIMIT,
                        Unit.RATIO,
                        "public guidance of driveline makers; verify for this line"),
                "the two joints together ripple like one of "
                        + line.residualAngle().text() + ", " + (line.withinGuidance() ? "within" : "beyond")
                        + " the usual guidance");
    }
}
