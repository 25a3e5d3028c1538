package witnessmark.gearbox.plan;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.speed.RoadSpeeds.Ceiling;
import witnessmark.gearbox.speed.RoadSpeeds.CruisingBand;
import witnessmark.gearbox.speed.ShiftStep;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.gearbox.start.StartGears;

/**
 * What one driver needs to know of one truck.
 *
 * @param lowRangeCeiling road speed above which no low-range gear may be taken; empty without a range
 * @param ceilings the same gear by gear, forward only
 * @param drops engine speed to lose in each kind of upshift, at the plan's shift speeds
 */
public record CoachingCard(
        String truck,
        Optional<Ceiling> lowRangeCeiling,
        List<Ceiling> ceilings,
        ShiftPlan plan,
        List<Drop> drops,
        StartGears empty,
        StartGears loaded,
        CruisingBand cruising,
        List<CoachingPoint> points) {

    /** The engine speed that upshifts of one kind lose, from the least to the most. */
    public record Drop(ShiftStep.Kind kind, Figure least, Figure most) {

        /** In revolutions per minute as a dial is read: 400, or 400 - 550. */
        public String onDial() {
            long from = CoachingCard.onDial(least);
            long to = CoachingCard.onDial(most);
            return from == to ? String.valueOf(from) : from + " - " + to;
        }
    }

    /** An engine speed to fifty, as a dial is read. */
    public static long onDial(Figure rpm) {
        return 50 * Math.round(rpm.value() / 50);
    }

    /** The upshifts with their engine speeds as a dial is read: 1-2 1050, 2-3 1150. */
    public String shiftsOnDial() {
        return plan.shifts().stream()
                .map(shift -> shift.step().from().id() + "-" + shift.step().to().id() + " " + onDial(shift.shiftAt()))
                .collect(Collectors.joining(", "));
    }

    /** Where to cruise in top gear, in both units. */
    public String cruise() {
        return cruise(SpeedUnits.BOTH);
    }

    /** The same in the units read. */
    public String cruise(SpeedUnits units) {
        return units.whole(cruising.from()) + " - " + units.whole(cruising.ease());
    }
}
