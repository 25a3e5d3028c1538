package witnessmark.gearbox.plan;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;

/**
 * Why a plan ends before the top gear: full torque does not hold the load there.
 *
 * @param gear the gear that the engine cannot hold, or not up to the speed at which the next one is due
 * @param notReached the lowest gear that the plan does not come to: this one or the next
 * @param engineSpeed at which it was looked at, the best that can be had
 * @param needed torque that the load asks of the engine
 * @param torque full torque
 */
public record NotPulled(Gear gear, Gear notReached, Figure engineSpeed, Figure needed, Figure torque) {}
