package witnessmark.gearbox.evidence;

import static witnessmark.gearbox.evidence.ComputedFinding.presentIf;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.shift.RangeShift;
import witnessmark.gearbox.shift.Verdict;

/** Findings from a range shift that somebody reports or a log shows. */
public final class ShiftEvidence {

    private ShiftEvidence() {}

    /** Ceiling, engine speed and slip energy for a downshift; slip energy alone for an upshift. */
    public static List<ComputedFinding> of(TruckProfile truck, RangeShift shift) {
        return shift.question().to().range() == Range.LOW
                ? List.of(aboveCeiling(truck, shift), overspeed(truck, shift), slipEnergy(truck, shift))
                : List.of(slipEnergy(truck, shift));
    }

    private static Map<String, Figure> inputs(TruckProfile truck, RangeShift shift) {
        Map<String, Figure> inputs = new LinkedHashMap<>();
        inputs.put("road speed", roadSpeed(shift));
        inputs.put(
                "ratio of gear " + shift.question().from().id(),
                ratio(shift.question().from().ratio()));
        inputs.put(
                "ratio of gear " + shift.question().to().id(),
                ratio(shift.question().to().ratio()));
        inputs.put("axle ratio", truck.figure(Parameter.AXLE_RATIO));
        inputs.put("tyre", truck.figure(Parameter.TYRE_REVS));
        inputs.put("governed speed", truck.figure(Parameter.GOVERNED_RPM));
        return inputs;
    }

    private static Figure ratio(double value) {
        return Figure.computed(value, Unit.RATIO, "i_main x range ratio x splitter ratio");
    }

    private static Figure roadSpeed(RangeShift shift) {
        return Figure.given(shift.question().roadKmh(), Unit.KILOMETRE_PER_HOUR);
    }

    private static ComputedFinding aboveCeiling(TruckProfile truck, RangeShift shift) {
        Figure speed = roadSpeed(shift);
        boolean above = speed.value() > shift.properCeiling().value() * Verdict.PROPER_SPEED;
        String gear = shift.question().to().id();
        return new ComputedFinding(
                "computed-low-range-above-ceiling",
                presentIf(above),
                inputs(truck, shift),
                shift.properCeiling().note(),
                speed,
                shift.properCeiling(),
                "the reported shift to gear " + gear + " at " + speed.text() + " was "
                        + (above ? "above" : "not above") + " its ceiling of "
                        + shift.properCeiling().text());
    }

    private static ComputedFinding overspeed(TruckProfile truck, RangeShift shift) {
        Figure times = shift.engine().timesGoverned();
        boolean over = times.value() > Verdict.PROPER_SPEED;
        String sentence = over
                ? "the reported downshift would have driven the engine to " + Words.times(times)
                        + " governed speed: possible only with the lever home and the clutch engaged (pedal up);"
                        + " with the pedal down the disc takes that speed, unseen"
                : "the reported downshift leaves the engine at " + Words.times(times) + " governed speed, within it";
        return new ComputedFinding(
                "computed-engine-overspeed-in-low",
                presentIf(over),
                inputs(truck, shift),
                "n_out i_main x auxiliary ratio after / n_governed",
                times,
                Figure.assumed(Verdict.PROPER_SPEED, Unit.RATIO, "governed speed, and 1 % for reading a dial"),
                sentence);
    }

    private static ComputedFinding slipEnergy(TruckProfile truck, RangeShift shift) {
        Figure times = shift.cone().timesHardestProper();
        boolean high = times.value() > Verdict.PROPER_ENERGY;
        Map<String, Figure> inputs = inputs(truck, shift);
        inputs.put("inertia at the mainshaft", shift.cone().inertia());
        return new ComputedFinding(
                "computed-range-slip-energy-high",
                presentIf(high),
                inputs,
                shift.cone().slipEnergy().note() + "; " + times.note(),
                times,
                Figure.assumed(
                        Verdict.PROPER_ENERGY, Unit.RATIO, "the hardest proper shift, and 5 % for rounding; judgement"),
                "the reported range shift puts " + Words.times(times) + " the slip energy of the hardest proper shift"
                        + " into the synchronizer: "
                        + Verdict.ofEnergy(times.value()).words());
    }
}
