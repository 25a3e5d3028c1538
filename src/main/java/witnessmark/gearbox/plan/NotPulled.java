package witnessmark.gearbox.plan;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;

/**
 * Why a plan ends before the top gear: full torque does not hold the load there.
 *
 * @param gear the gear that the engine cannot hold
 * @param engineSpeed at which it was looked at, the best that can be had
 * @param needed torque that the load asks of the engine
 * @param torque full torque
 */
public record NotPulled(Gear gear, Figure engineSpeed, Figure needed, Figure torque) {}
