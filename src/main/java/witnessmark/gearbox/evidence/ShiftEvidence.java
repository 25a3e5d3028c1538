package witnessmark.gearbox.evidence;

import static witnessmark.gearbox.evidence.ComputedFinding.presentIf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.evidence.ComputedFinding.Kind;
import witnessmark.gearbox.shift.InRangeShift;
import witnessmark.gearbox.shift.RangeShift;
import witnessmark.gearbox.shift.RangeShiftQuestion;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;
import witnessmark.gearbox.shift.ShiftVerdict;

/** Findings from a shift that somebody reports or a log shows. */
public final class ShiftEvidence {

    private final TruckProfile truck;
    private final Map<String, Figure> inputs;

    private ShiftEvidence(TruckProfile truck, Figure roadSpeed, Gear from, Gear to) {
        this.truck = truck;
        this.inputs = new LinkedHashMap<>();
        inputs.put("road speed", roadSpeed);
        inputs.put("ratio of gear " + from.id(), ratio(from));
        inputs.put("ratio of gear " + to.id(), ratio(to));
        inputs.put("axle ratio", truck.figure(Parameter.AXLE_RATIO));
        inputs.put("tyre", truck.figure(Parameter.TYRE_REVS));
        inputs.put("governed speed", truck.figure(Parameter.GOVERNED_RPM));
    }

    /**
     * Ceiling, speed and slip energy for a downshift; slip energy alone for an upshift. The speed is the engine's or
     * the disc's by the clutch, and nobody's where the lever stayed in neutral or the truck rolled against the gear.
     * What follows from the road speed alone is counted once, by the ceiling.
     */
    public static List<ComputedFinding> of(TruckProfile truck, RangeShift shift) {
        RangeShiftQuestion question = shift.question();
        ShiftEvidence evidence = new ShiftEvidence(truck, kmh(question.roadKmh()), question.from(), question.to());
        ComputedFinding energy = evidence.coneEnergy(shift);
        if (question.to().range() == Range.HIGH) {
            return List.of(energy);
        }
        List<ComputedFinding> findings = new ArrayList<>();
        findings.add(evidence.aboveCeiling(question, shift.properCeiling()));
        evidence.driven(question, shift.engine())
                .map(driven -> driven.kind() == Kind.ENGINE_OVERSPEED_IN_LOW ? toldAlready(driven) : driven)
                .ifPresent(findings::add);
        boolean bySpeedAlone = question.lever() != LeverTiming.LEVER_HOME_FIRST
                && !question.to().reverse();
        findings.add(bySpeedAlone ? toldAlready(energy) : energy);
        return List.copyOf(findings);
    }

    private static ComputedFinding toldAlready(ComputedFinding finding) {
        return new ComputedFinding(
                finding.kind(),
                ComputedFinding.State.NOT_COUNTED,
                finding.inputs(),
                finding.formula(),
                finding.result(),
                finding.limit(),
                finding.summary() + "; not counted beside the ceiling, for it follows from the same road speed");
    }

    /** The engine's or the disc's speed for a downshift; nothing for an upshift. */
    public static List<ComputedFinding> of(TruckProfile truck, InRangeShift shift) {
        ShiftEvidence evidence = new ShiftEvidence(truck, shift.roadSpeed(), shift.from(), shift.to());
        return shift.down()
                ? List.of(evidence.driven(shift.clutch(), shift.engineAfter(), shift.timesGoverned()))
                : List.of();
    }

    private static Figure ratio(Gear gear) {
        return Figure.computed(gear.ratio(), Unit.RATIO, "front ratio x range ratio x splitter ratio");
    }

    private static Figure kmh(double value) {
        return Figure.given(value, Unit.KILOMETRE_PER_HOUR);
    }

    private ComputedFinding aboveCeiling(RangeShiftQuestion question, Figure ceiling) {
        Figure speed = kmh(question.roadKmh());
        boolean above = speed.value() > ceiling.value() * ShiftVerdict.PROPER_SPEED;
        return new ComputedFinding(
                Kind.LOW_RANGE_ABOVE_CEILING,
                presentIf(above),
                inputs,
                ceiling.note(),
                speed,
                ceiling,
                "the reported shift to gear " + question.to().id() + " at " + speed.text() + " was "
                        + (above ? "above" : "not above") + " its ceiling of " + ceiling.text());
    }

    private Optional<ComputedFinding> driven(RangeShiftQuestion question, RangeShift.Engine engine) {
        boolean reached = question.lever() != LeverTiming.IN_NEUTRAL
                && engine.inputAfter().value() >= 0;
        return reached
                ? Optional.of(driven(question.clutch(), engine.inputAfter(), engine.timesGoverned()))
                : Optional.empty();
    }

    private ComputedFinding driven(Clutch clutch, Figure rpm, Figure timesGoverned) {
        return clutch == Clutch.ENGAGED ? engineOverspeed(rpm, timesGoverned) : discOverspeed(rpm, timesGoverned);
    }

    private ComputedFinding engineOverspeed(Figure rpm, Figure times) {
        boolean over = times.value() > ShiftVerdict.PROPER_SPEED;
        String sentence = over
                ? "the reported downshift would have driven the engine to " + TimesText.times(times)
                        + " governed speed: possible only with the lever home and the clutch engaged (pedal up);"
                        + " with the pedal down the disc takes that speed, unseen"
                : "the reported downshift leaves the engine at " + TimesText.times(times)
                        + " governed speed, within it";
        return new ComputedFinding(
                Kind.ENGINE_OVERSPEED_IN_LOW,
                presentIf(over),
                inputs,
                rpm.note() + "; " + times.note(),
                times,
                Figure.assumed(ShiftVerdict.PROPER_SPEED, Unit.RATIO, "governed speed, and 1 % for reading a dial"),
                sentence);
    }

    private ComputedFinding discOverspeed(Figure rpm, Figure times) {
        Figure limit = truck.figure(Parameter.DISC_LIMIT);
        Figure speed = Figure.computed(Math.abs(rpm.value()), Unit.RPM, rpm.note());
        boolean over = speed.value() > limit.value();
        Map<String, Figure> with = new LinkedHashMap<>(inputs);
        with.put("limit of the disc", limit);
        return new ComputedFinding(
                Kind.DISC_OVERSPEED,
                presentIf(over),
                with,
                rpm.note(),
                speed,
                limit,
                "with the pedal down the road turned the clutch disc at " + speed.text() + ", " + TimesText.times(times)
                        + " governed speed, unseen on the tachometer: " + (over ? "above" : "not above")
                        + " the disc's limit of " + limit.text());
    }

    private ComputedFinding coneEnergy(RangeShift shift) {
        Figure times = shift.cone().timesHardestProper();
        Map<String, Figure> with = new LinkedHashMap<>(inputs);
        with.put("inertia at the cone", shift.cone().inertia());
        return new ComputedFinding(
                Kind.CONE_ENERGY_HIGH,
                presentIf(times.value() > ShiftVerdict.PROPER_ENERGY),
                with,
                shift.cone().slipEnergy().note() + "; " + times.note(),
                times,
                Figure.assumed(
                        ShiftVerdict.PROPER_ENERGY,
                        Unit.RATIO,
                        "the hardest proper shift, and 5 % for rounding; judgement"),
                "the reported range shift puts " + TimesText.times(times)
                        + " the slip energy of the hardest proper shift"
                        + " into the synchronizer: "
                        + ShiftVerdict.ofEnergy(times.value()).words());
    }
}
