package witnessmark.gearbox.evidence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.evidence.ComputedFinding.Kind;
import witnessmark.gearbox.evidence.ComputedFinding.State;
import witnessmark.gearbox.start.AnalyseStart;
import witnessmark.gearbox.start.Launch;
import witnessmark.gearbox.start.StandingStart;
import witnessmark.gearbox.start.StartQuestion;

/** Findings from a start that somebody reports or a log shows. */
public final class StartEvidence {

    private final TruckProfile truck;
    private final StandingStart start;
    /** The same load and grade in the lowest gear: what the truck can do, whatever gear was chosen. */
    private final StandingStart inLowest;

    private StartEvidence(TruckProfile truck, StartQuestion question) {
        AnalyseStart analysis = new AnalyseStart(truck);
        this.truck = truck;
        this.start = analysis.of(question);
        this.inLowest = analysis.of(
                new StartQuestion(truck.gears().forward().get(0), question.massKg(), question.gradePercent()));
    }

    public static List<ComputedFinding> of(TruckProfile truck, StartQuestion question) {
        StartEvidence evidence = new StartEvidence(truck, question);
        return List.of(evidence.gearTooHigh(), evidence.gradeability(), evidence.shaftYield());
    }

    private Gear gear() {
        return start.question().gear();
    }

    private Map<String, Figure> inputs() {
        StartQuestion question = start.question();
        Map<String, Figure> inputs = new LinkedHashMap<>();
        inputs.put("mass", Figure.given(question.massKg(), Unit.KILOGRAM));
        inputs.put("grade", Figure.given(question.gradePercent(), Unit.PERCENT));
        inputs.put(
                "ratio of gear " + gear().id(),
                Figure.computed(gear().ratio(), Unit.RATIO, "i_main x range ratio x splitter ratio"));
        inputs.put("axle ratio", truck.figure(Parameter.AXLE_RATIO));
        inputs.put("tyre", truck.figure(Parameter.TYRE_REVS));
        inputs.put("engine speed held", truck.figure(Parameter.START_RPM));
        inputs.put("clutch torque", start.clutchTorque());
        return inputs;
    }

    /**
     * A start that fails in the lowest gear too is not the gear's fault, nor one on which the wheels spin. Where the heat
     * depends on how gently the clutch was let in, the gear alone proves nothing.
     */
    private ComputedFinding gearTooHigh() {
        boolean lowest = gear().reverse() || gear().equals(inLowest.question().gear());
        Figure result = effort(start);
        return new ComputedFinding(
                Kind.START_GEAR_TOO_HIGH,
                lowest ? State.ABSENT : gearState(),
                inputs(),
                result.note(),
                result,
                start.launch() instanceof Launch.LocksUp
                        ? truck.figure(Parameter.CLUTCH_START_ENERGY)
                        : start.clutchTorque(),
                "the reported start in gear " + gear().id() + ": "
                        + start.verdict().words() + " (" + effortWords() + ")"
                        + (lowest ? "; it is the lowest gear there is" : ""));
    }

    private State gearState() {
        return switch (start.verdict()) {
            case SENSIBLE -> State.ABSENT;
            case HOT_AT_PART_THROTTLE, SPINS, RUNS_AWAY -> State.NOT_COUNTED;
            case CLUTCH_OVERHEATED, HIGH_RANGE, DOES_NOT_START, TWISTS_SHAFT -> State.PRESENT;
        };
    }

    private static Figure effort(StandingStart start) {
        return start.launch() instanceof Launch.LocksUp closes ? closes.slipEnergy() : start.loadAtClutch();
    }

    private String effortWords() {
        if (!(start.launch() instanceof Launch.LocksUp closes)) {
            return "load at the clutch " + start.loadAtClutch().text() + ", clutch torque "
                    + start.clutchTorque().text();
        }
        String heat = "clutch heat " + closes.slipEnergy().text() + " with all the torque there is, "
                + closes.mostSlipEnergy().text() + " let in gently";
        Gear low = inLowest.question().gear();
        return !gear().equals(low) && inLowest.launch() instanceof Launch.LocksUp lowest
                ? heat + "; "
                        + TimesText.times(Figure.computed(
                                closes.slipEnergy().value()
                                        / lowest.slipEnergy().value(),
                                Unit.RATIO,
                                "W / W(lowest)"))
                        + " that of gear " + low.id()
                : heat;
    }

    /** Of the truck, so in its lowest gear; one start that works does not show that the route is within its reach. */
    private ComputedFinding gradeability() {
        Figure grade = Figure.given(start.question().gradePercent(), Unit.PERCENT);
        boolean isShort = inLowest.launch() instanceof Launch.NoLockUp;
        return new ComputedFinding(
                Kind.GRADEABILITY_SHORT,
                isShort ? State.PRESENT : State.NOT_COUNTED,
                inputs(),
                inLowest.reach().byTorque().note(),
                grade,
                inLowest.reach().byTorque(),
                "the lowest gear, " + inLowest.question().gear().id() + ", starts this mass on up to "
                        + inLowest.reach().byTorque().text() + "; the reported grade of " + grade.text() + " is "
                        + (isShort ? "beyond it, so the clutch slips in any gear" : "within it")
                        + (grade.value() > inLowest.reach().byGrip().value()
                                ? "; the drive wheels hold up to "
                                        + inLowest.reach().byGrip().text() + " only"
                                : ""));
    }

    private ComputedFinding shaftYield() {
        StandingStart.Mainshaft shaft = start.mainshaft();
        Map<String, Figure> inputs = inputs();
        inputs.put("mainshaft diameter", truck.figure(Parameter.MAINSHAFT_DIAMETER));
        inputs.put("tensile yield", truck.figure(Parameter.YIELD));
        inputs.put("clutch capacity", truck.figure(Parameter.CLUTCH_CAPACITY));
        inputs.put("shock factor", truck.figure(Parameter.SHOCK_FACTOR));
        boolean measured = truck.figure(Parameter.MAINSHAFT_DIAMETER).basis() == Basis.GIVEN;
        return new ComputedFinding(
                Kind.MAINSHAFT_TORQUE_OVER_YIELD,
                measured ? state(shaft.twist()) : State.NOT_COUNTED,
                inputs,
                shaft.needed().note() + "; " + shaft.ceiling().note() + "; "
                        + shaft.ceilingStress().note(),
                shaft.ceilingStress(),
                shaft.shearYield(),
                "the load in gear " + gear().id() + " puts "
                        + shaft.neededStress().text()
                        + " on the mainshaft" + (clutchSlipsFirst() ? ", were the clutch not to slip before," : "")
                        + " and a let-in clutch up to "
                        + shaft.ceilingStress().text() + "; its shear yield is "
                        + shaft.shearYield().text() + ": " + shaft.twist().words()
                        + (measured ? "" : "; the shaft's diameter is assumed, measure it before this counts"));
    }

    private boolean clutchSlipsFirst() {
        return Math.abs(start.loadAtClutch().value()) > truck.value(Parameter.CLUTCH_CAPACITY);
    }

    /** Yield that only a shock against stuck wheels reaches says nothing of the start in hand. */
    private static State state(StandingStart.Twist twist) {
        return switch (twist) {
            case REACHED -> State.PRESENT;
            case ONLY_BY_SHOCK -> State.NOT_COUNTED;
            case NOT_REACHED -> State.ABSENT;
        };
    }
}
