package witnessmark.gearbox.start;

import witnessmark.gearbox.Figure;

/** How the clutch comes through a start with engine speed and clutch torque held. */
public sealed interface Launch {

    /**
     * The clutch closes.
     *
     * @param slipEnergy heat made in the clutch with all the torque there is, the least that it can be
     * @param mostSlipEnergy heat with half of the torque that is over the load
     * @param heating rise of the plates' and flywheel's mean temperature by the most heat
     * @param roadSpeed road speed at which the clutch stops slipping
     */
    record LocksUp(Figure time, Figure slipEnergy, Figure mostSlipEnergy, Figure heating, Figure roadSpeed)
            implements Launch {}

    /**
     * The clutch never closes: its torque does not exceed the load.
     *
     * @param shortfall torque that is missing at the clutch
     */
    record NoLockUp(Figure shortfall) implements Launch {}
}
