package witnessmark.gearbox.plan;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/**
 * The engine speed under which the engine labours, gear by gear. In a low gear little torque is asked and the engine
 * may turn slowly; the limit rises to the lowest pulling speed in the top gear. How it rises is judgement.
 *
 * @param massKg truck and trailer
 * @param gradePercent grade that must be held right after a shift
 */
record LuggingLimit(TruckProfile truck, ShiftPlan.Floor floor, double massKg, double gradePercent) {

    /** Above idle, so that the idle governor does not take over; judgement. */
    private static final double OVER_IDLE = 1.15;
    /** Torque in hand over the load; judgement. */
    private static final double RESERVE = 1.2;

    private static final double GRAVITY = 9.81;
    /** Half the density of air at 15 degrees, kg/m3. */
    private static final double HALF_AIR_DENSITY = 1.225 / 2;

    Figure of(Gear gear) {
        double pulling = truck.value(Parameter.LOWEST_PULLING_RPM);
        if (floor == ShiftPlan.Floor.LOWEST_PULLING_SPEED) {
            return Figure.computed(pulling, Unit.RPM, "lowest pulling speed, in every gear");
        }
        double byTorque = truck.torque()
                .lowestRpmGiving(RESERVE * loadTorque(gear, pulling))
                .orElse(pulling);
        return Figure.computed(
                Math.max(ramp(gear, pulling), Math.min(pulling, byTorque)),
                Unit.RPM,
                "from 1.15 times idle in the lowest gear to the lowest pulling speed in the top gear, in step with"
                        + " ln(ratio); higher where full torque is not 1.2 times the load, up to the lowest pulling speed");
    }

    private double ramp(Gear gear, double pulling) {
        double least = Math.min(OVER_IDLE * truck.value(Parameter.IDLE_RPM), pulling);
        double lowest = truck.gears().forward().get(0).ratio();
        double top = truck.gears().top().ratio();
        return top == lowest
                ? pulling
                : least + (pulling - least) * Math.log(lowest / gear.ratio()) / Math.log(lowest / top);
    }

    private double loadTorque(Gear gear, double rpm) {
        double angle = Math.atan(gradePercent / 100);
        double metresPerSecond = truck.roadKmh(rpm / gear.ratio()) / 3.6;
        double pull = massKg * GRAVITY * (Math.sin(angle) + truck.value(Parameter.ROLLING_RESISTANCE) * Math.cos(angle))
                + HALF_AIR_DENSITY * truck.value(Parameter.DRAG_AREA) * metresPerSecond * metresPerSecond;
        return pull * truck.wheelRadiusMetres() / (gear.ratio() * truck.value(Parameter.AXLE_RATIO));
    }
}
