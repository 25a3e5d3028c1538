package witnessmark.gearbox.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.speed.RoadSpeeds;
import witnessmark.gearbox.speed.ShiftStep;
import witnessmark.gearbox.speed.Steps;

/**
 * A progressive plan: each upshift as early as the new gear still pulls, and never earlier than the one before it.
 *
 * @param shifts in order, slowest first; empty for a box with one gear
 * @param meanShiftSpeed mean engine speed of the shifts; empty without shifts
 * @param rangeEnergyShare slip energy of the range upshift over that at governed speed: road speed squared; empty
 *     without a range
 */
public record ShiftPlan(
        Floor floor,
        double massKg,
        double gradePercent,
        List<PlannedShift> shifts,
        Optional<Figure> meanShiftSpeed,
        Optional<Figure> rangeEnergyShare) {

    /** What a shift may land on. */
    public enum Floor {
        /** Low in the low gears, where little is asked, and rising to the lowest pulling speed in the top gear. */
        RISING_WITH_THE_GEAR,
        /** The lowest pulling speed in every gear: the careful reading, for an engine that dislikes slow running. */
        LOWEST_PULLING_SPEED
    }

    /** For the loaded truck on the profile's own plan grade. */
    public static ShiftPlan of(TruckProfile truck) {
        return of(
                truck,
                Floor.RISING_WITH_THE_GEAR,
                truck.value(Parameter.MASS_LOADED),
                truck.value(Parameter.PLAN_GRADE));
    }

    public static ShiftPlan of(TruckProfile truck, Floor floor, double massKg, double gradePercent) {
        LuggingLimit limit = new LuggingLimit(truck, floor, massKg, gradePercent);
        List<PlannedShift> shifts = new ArrayList<>();
        double before = 0;
        for (ShiftStep step : Steps.of(truck).inOrder()) {
            PlannedShift shift = shift(truck, step, limit.of(step.to()), before);
            shifts.add(shift);
            before = shift.shiftAt().value();
        }
        return new ShiftPlan(floor, massKg, gradePercent, List.copyOf(shifts), mean(shifts), rangeEnergy(shifts));
    }

    /** The engine speed at which the plan leaves a gear; empty for the top gear. */
    public Optional<Figure> leaves(Gear gear) {
        return shifts.stream()
                .filter(shift -> shift.step().from().equals(gear))
                .map(PlannedShift::shiftAt)
                .findFirst();
    }

    private static PlannedShift shift(TruckProfile truck, ShiftStep step, Figure limit, double before) {
        double governed = truck.value(Parameter.GOVERNED_RPM);
        double wanted = limit.value() * step.step().value();
        double at = Math.min(governed, Math.max(before, wanted));
        RoadSpeeds speeds = new RoadSpeeds(truck);
        return new PlannedShift(
                step,
                limit,
                Figure.computed(
                        at,
                        Unit.RPM,
                        "limit of the new gear x step, not below the shift before, at most governed speed"),
                speeds.roadSpeed(step.from(), at),
                step.rpmAfter(at),
                wanted > governed,
                new PlannedShift.AtGoverned(speeds.roadSpeed(step.from(), governed), step.rpmAfter(governed)));
    }

    private static Optional<Figure> mean(List<PlannedShift> shifts) {
        return shifts.isEmpty()
                ? Optional.empty()
                : Optional.of(Figure.computed(
                        shifts.stream()
                                .mapToDouble(shift -> shift.shiftAt().value())
                                .average()
                                .orElseThrow(),
                        Unit.RPM,
                        "mean of the shift speeds"));
    }

    private static Optional<Figure> rangeEnergy(List<PlannedShift> shifts) {
        return shifts.stream()
                .filter(shift -> shift.step().kind() == ShiftStep.Kind.LEVER_AND_RANGE)
                .findFirst()
                .map(shift ->
                        shift.roadSpeed().value() / shift.governed().roadSpeed().value())
                .map(share -> Figure.computed(share * share, Unit.RATIO, "(v_planned / v_governed)^2"));
    }
}
