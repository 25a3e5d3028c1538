package witnessmark.gearbox.plan;

import java.util.List;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.speed.ShiftStep;

/**
 * A progressive plan: each upshift as early as the new gear still pulls, and never earlier than the one before it. Gears
 * that full torque does not hold on the grade are not planned.
 *
 * @param shifts in order, slowest first, as far as the engine pulls; empty for a box with one gear
 * @param gaps steps too wide to be taken under way, such as the one up from a deep reduction: even governed speed lands
 *     below the torque curve. The plan goes on from a start in the gear after
 * @param highest the highest gear that the engine holds on this grade; empty where it holds none
 * @param end why the plan ends before the top gear; empty where it reaches it
 * @param lostPerSecond road speed lost in each second of a shift, while no torque pulls; negative downhill
 * @param meanShiftSpeed mean engine speed of the shifts; empty without shifts
 * @param rangeEnergyShare slip energy of the range upshift over that at governed speed: road speed squared; empty
 *     without a range
 */
public record ShiftPlan(
        Floor floor,
        double massKg,
        double gradePercent,
        List<PlannedShift> shifts,
        List<ShiftStep> gaps,
        Optional<Gear> highest,
        Optional<NotPulled> end,
        Figure lostPerSecond,
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

    /** Throws where mass or grade cannot be. */
    public static ShiftPlan of(TruckProfile truck, Floor floor, double massKg, double gradePercent) {
        return new PlanShifts(new RoadLoad(truck, massKg, gradePercent), floor).plan(floor);
    }

    /** The shifts after the last gap: those that follow each other in one go. */
    public List<PlannedShift> inOneGo() {
        return gaps.isEmpty()
                ? shifts
                : shifts.stream()
                        .filter(shift -> shift.step().from().ratio()
                                <= gaps.get(gaps.size() - 1).to().ratio())
                        .toList();
    }

    /** The engine speed at which the plan leaves a gear; empty for a gear that it does not leave. */
    public Optional<Figure> leaves(Gear gear) {
        return shifts.stream()
                .filter(shift -> shift.step().from().equals(gear))
                .map(PlannedShift::shiftAt)
                .findFirst();
    }
}
