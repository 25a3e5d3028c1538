package witnessmark.gearbox.plan;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.speed.ShiftStep;

/**
 * One upshift of a plan, beside the same shift at governed speed.
 *
 * @param luggingLimit lowest engine speed to land on in the new gear
 * @param shiftAt engine speed to shift at
 * @param roadSpeed road speed there
 * @param rpmAfter engine speed after the shift
 * @param belowLimit whether even governed speed lands below the limit, so that this step is too wide for the load
 * @param byTorque lowest engine speed in the new gear whose full torque is a reserve over the load
 * @param governed the same shift at governed speed
 */
public record PlannedShift(
        ShiftStep step,
        Figure luggingLimit,
        Figure shiftAt,
        Figure roadSpeed,
        Figure rpmAfter,
        boolean belowLimit,
        Figure byTorque,
        AtGoverned governed) {

    public record AtGoverned(Figure roadSpeed, Figure rpmAfter) {}
}
