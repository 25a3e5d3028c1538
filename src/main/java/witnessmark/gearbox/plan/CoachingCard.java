package witnessmark.gearbox.plan;

import java.util.List;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.speed.RoadSpeeds.Ceiling;
import witnessmark.gearbox.speed.RoadSpeeds.CruisingBand;
import witnessmark.gearbox.speed.ShiftStep;
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
        String title,
        Optional<Ceiling> lowRangeCeiling,
        List<Ceiling> ceilings,
        ShiftPlan plan,
        List<Drop> drops,
        StartGears empty,
        StartGears loaded,
        CruisingBand cruising,
        List<CoachingPoint> points) {

    /** The engine speed that upshifts of one kind lose, from the least to the most. */
    public record Drop(ShiftStep.Kind kind, Figure least, Figure most) {}
}
