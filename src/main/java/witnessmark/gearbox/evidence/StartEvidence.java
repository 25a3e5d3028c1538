package witnessmark.gearbox.evidence;

import static witnessmark.gearbox.evidence.ComputedFinding.presentIf;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.start.AnalyseStart;
import witnessmark.gearbox.start.Launch;
import witnessmark.gearbox.start.Start;
import witnessmark.gearbox.start.StartQuestion;

/** Findings from a start that somebody reports or a log shows. */
public final class StartEvidence {

    private StartEvidence() {}

    public static List<ComputedFinding> of(TruckProfile truck, StartQuestion question) {
        Start start = new AnalyseStart(truck).of(question);
        return List.of(gearTooHigh(truck, start), gradeability(truck, start), shaftYield(truck, start));
    }

    private static Map<String, Figure> inputs(TruckProfile truck, Start start) {
        StartQuestion question = start.question();
        Map<String, Figure> inputs = new LinkedHashMap<>();
        inputs.put("mass", Figure.given(question.massKg(), Unit.KILOGRAM));
        inputs.put("grade", Figure.given(question.gradePercent(), Unit.PERCENT));
        Gear gear = question.gear();
        inputs.put(
                "ratio of gear " + gear.id(),
                Figure.computed(gear.ratio(), Unit.RATIO, "i_main x range ratio x splitter ratio"));
        inputs.put("axle ratio", truck.figure(Parameter.AXLE_RATIO));
        inputs.put("tyre", truck.figure(Parameter.TYRE_REVS));
        inputs.put("clutch torque", start.clutchTorque());
        return inputs;
    }

    private static ComputedFinding gearTooHigh(TruckProfile truck, Start start) {
        boolean tooHigh =
                switch (start.verdict()) {
                    case CLUTCH_OVERHEATED, HIGH_RANGE, DOES_NOT_START, TWISTS_SHAFT -> true;
                    case SENSIBLE -> false;
                };
        Figure limit = truck.figure(Parameter.CLUTCH_START_ENERGY);
        Figure result = start.launch() instanceof Launch.LocksUp closes ? closes.slipEnergy() : start.loadAtClutch();
        return new ComputedFinding(
                "computed-start-gear-too-high",
                presentIf(tooHigh),
                inputs(truck, start),
                result.note(),
                result,
                start.launch() instanceof Launch.LocksUp ? limit : start.clutchTorque(),
                "the reported start in gear " + start.question().gear().id() + ": "
                        + start.verdict().words() + " (" + result.text() + ")");
    }

    private static ComputedFinding gradeability(TruckProfile truck, Start start) {
        Figure grade = Figure.given(start.question().gradePercent(), Unit.PERCENT);
        boolean isShort = start.launch() instanceof Launch.NoLockUp;
        return new ComputedFinding(
                "computed-gradeability-short",
                presentIf(isShort),
                inputs(truck, start),
                start.steepest().note(),
                grade,
                start.steepest(),
                "gear " + start.question().gear().id() + " starts this mass on up to "
                        + start.steepest().text() + "; the reported grade of " + grade.text() + " is "
                        + (isShort ? "beyond it, so the clutch slips without end" : "within it"));
    }

    private static ComputedFinding shaftYield(TruckProfile truck, Start start) {
        Start.Mainshaft shaft = start.mainshaft();
        Map<String, Figure> inputs = inputs(truck, start);
        inputs.put("mainshaft diameter", truck.figure(Parameter.MAINSHAFT_DIAMETER));
        inputs.put("tensile yield", truck.figure(Parameter.YIELD));
        inputs.put("clutch capacity", truck.figure(Parameter.CLUTCH_CAPACITY));
        inputs.put("shock factor", truck.figure(Parameter.SHOCK_FACTOR));
        return new ComputedFinding(
                "computed-mainshaft-yield-in-reach",
                presentIf(shaft.twist() != Start.Twist.NOT_REACHED),
                inputs,
                shaft.ceiling().note() + "; " + shaft.ceilingStress().note(),
                shaft.ceilingStress(),
                shaft.shearYield(),
                "a let-in clutch in gear " + start.question().gear().id() + " puts up to "
                        + shaft.ceilingStress().text() + " on the mainshaft, whose shear yield is "
                        + shaft.shearYield().text() + ": " + shaft.twist().words());
    }
}
