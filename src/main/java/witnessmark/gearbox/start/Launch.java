package witnessmark.gearbox.start;

import witnessmark.gearbox.Figure;

/** How the clutch comes through a start with engine speed and clutch torque held. */
public sealed interface Launch {

    /**
     * The clutch closes.
     *
     * @param slipEnergy heat made in the clutch
     * @param heating rise of the plates' and flywheel's mean temperature
     * @param roadSpeed road speed at which the clutch stops slipping
     */
    record LocksUp(Figure time, Figure slipEnergy, Figure heating, Figure roadSpeed) implements Launch {}

    /**
     * The clutch never closes: its torque does not exceed the load.
     *
     * @param shortfall torque that is missing at the clutch
     */
    record NoLockUp(Figure shortfall) implements Launch {}
}
