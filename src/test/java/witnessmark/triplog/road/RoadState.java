package witnessmark.triplog.road;

/**
 * Everything a sensor could read at one moment.
 *
 * @param t seconds since the log began
 * @param rpm engine speed
 * @param kmh road speed, without sign
 * @param inputRpm input shaft speed
 * @param pedal clutch pedal travel in per cent, 100 at the floor
 * @param throttle accelerator in per cent
 * @param torque engine torque in per cent of its peak
 * @param lever 0 neutral, -1 reverse, else the gear position
 * @param knob range knob: 0 low, 1 high
 * @param brake whether the service brake is on
 * @param parked whether the parking brake is on
 * @param oil gearbox oil in Celsius
 */
record RoadState(
        double t,
        double rpm,
        double kmh,
        double inputRpm,
        double pedal,
        double throttle,
        double torque,
        int lever,
        int knob,
        boolean brake,
        boolean parked,
        double oil) {}
