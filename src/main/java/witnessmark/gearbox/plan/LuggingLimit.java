package witnessmark.gearbox.plan;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/**
 * The engine speed under which the engine labours, gear by gear. In a low gear little torque is asked and the engine
 * may turn slowly; the limit rises to the lowest pulling speed in the top gear. How it rises is judgement.
 */
record LuggingLimit(RoadLoad load, ShiftPlan.Floor floor) {

    /** Above idle, so that the idle governor does not take over; judgement. */
    static final double OVER_IDLE = 1.15;
    /** Torque in hand over the load; judgement. */
    static final double RESERVE = 1.2;

    Figure of(Gear gear) {
        TruckProfile truck = load.truck();
        double curveStart = truck.torque().points().firstKey();
        double pulling = truck.value(Parameter.LOWEST_PULLING_RPM);
        if (floor == ShiftPlan.Floor.LOWEST_PULLING_SPEED) {
            return Figure.computed(
                    Math.max(curveStart, pulling), Unit.RPM, "n_limit = max(n_curve, n_pull); in every gear");
        }
        return Figure.computed(
                Math.max(curveStart, Math.max(ramp(gear), Math.min(pulling, byTorque(gear)))),
                Unit.RPM,
                "n_limit = max(n_curve, n_least + (n_pull - n_least) ln(i_first / i_to) / ln(i_first / i_top),"
                        + " min(n_pull, n_torque)) where n_least = min(1.15 n_idle, n_pull)");
    }

    /** Lowest engine speed whose full torque is the reserve over the load; the lowest pulling speed where none is. */
    double byTorque(Gear gear) {
        double pulling = load.truck().value(Parameter.LOWEST_PULLING_RPM);
        return load.truck()
                .torque()
                .lowestRpmGiving(RESERVE * load.engineTorque(gear, pulling))
                .orElse(pulling);
    }

    private double ramp(Gear gear) {
        TruckProfile truck = load.truck();
        double pulling = truck.value(Parameter.LOWEST_PULLING_RPM);
        double least = Math.min(OVER_IDLE * truck.value(Parameter.IDLE_RPM), pulling);
        double lowest = truck.gears().forward().get(0).ratio();
        double top = truck.gears().top().ratio();
        return top == lowest
                ? pulling
                : least + (pulling - least) * Math.log(lowest / gear.ratio()) / Math.log(lowest / top);
    }
}
