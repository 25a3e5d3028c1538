package witnessmark.gearbox.plan;

import java.util.List;
import java.util.stream.Stream;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/** What the letters in a plan's formulas stand for, so that every figure can be worked out again by hand. */
public final class PlanSymbols {

    private PlanSymbols() {}

    /** What holds for every shift of the plan. */
    public static List<Symbol> of(TruckProfile truck, ShiftPlan plan) {
        List<Gear> forward = truck.gears().forward();
        return List.of(
                new Symbol("m", "mass", Figure.given(plan.massKg(), Unit.KILOGRAM)),
                new Symbol("grade", "rise over run", Figure.given(plan.gradePercent(), Unit.PERCENT)),
                new Symbol("g", "gravity", Figure.given(RoadLoad.GRAVITY, Unit.METRE_PER_SECOND_SQUARED)),
                Symbol.of(truck, "f", Parameter.ROLLING_RESISTANCE),
                Symbol.of(truck, "drag_area", Parameter.DRAG_AREA),
                Symbol.of(truck, "i_axle", Parameter.AXLE_RATIO),
                Symbol.of(truck, "N_km", Parameter.TYRE_REVS),
                Symbol.of(truck, "n_idle", Parameter.IDLE_RPM),
                Symbol.of(truck, "n_pull", Parameter.LOWEST_PULLING_RPM),
                Symbol.of(truck, "n_governed", Parameter.GOVERNED_RPM),
                new Symbol(
                        "n_curve",
                        "lowest speed of the torque curve",
                        new Figure(
                                truck.torque().points().firstKey(),
                                Unit.RPM,
                                truck.torque().basis(),
                                truck.torque().note())),
                ratio("i_first", forward.get(0)),
                ratio("i_top", truck.gears().top()));
    }

    /** What holds for one shift; the shift before it, if any, gives the speed not to go under. */
    public static List<Symbol> of(PlannedShift shift, double before) {
        return Stream.of(
                        ratio("i_from", shift.step().from()),
                        ratio("i_to", shift.step().to()),
                        new Symbol("n_before", "engine speed of the shift before", Figure.given(before, Unit.RPM)),
                        new Symbol("n_torque", "lowest speed that gives 1.2 times the load's torque", shift.byTorque()))
                .toList();
    }

    private static Symbol ratio(String symbol, Gear gear) {
        return new Symbol(
                symbol,
                "whole ratio of gear " + gear.id(),
                Figure.computed(gear.ratio(), Unit.RATIO, "from the ratios of the profile"));
    }
}
