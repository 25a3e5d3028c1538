package witnessmark.gearbox.start;

import java.util.List;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/** What the letters in a start's formulas stand for, so that every figure can be worked out again by hand. */
public final class StartSymbols {

    private StartSymbols() {}

    public static List<Symbol> of(TruckProfile truck, StartQuestion question) {
        return List.of(
                new Symbol("m", "mass", Figure.given(question.massKg(), Unit.KILOGRAM)),
                new Symbol("grade", "rise over run", Figure.given(question.gradePercent(), Unit.PERCENT)),
                Symbol.of(truck, "f", Parameter.ROLLING_RESISTANCE),
                new Symbol("g", "gravity", Figure.given(AnalyseStart.GRAVITY, Unit.METRE_PER_SECOND_SQUARED)),
                ratio("i_gear", "whole ratio", question.gear().ratio()),
                ratio("i_main", "front ratio", question.gear().lever().ratio()),
                ratio("i_auxiliary", "range times splitter", question.gear().auxiliaryRatio()),
                Symbol.of(truck, "grip", Parameter.GRIP),
                Symbol.of(truck, "share", Parameter.DRIVE_SHARE),
                Symbol.of(truck, "i_axle", Parameter.AXLE_RATIO),
                Symbol.of(truck, "N_km", Parameter.TYRE_REVS),
                Symbol.of(truck, "n_start", Parameter.START_RPM),
                new Symbol(
                        "engine_torque",
                        "full engine torque at the held speed",
                        new Figure(
                                truck.torque().atRpm(truck.value(Parameter.START_RPM)),
                                Unit.NEWTON_METRE,
                                truck.torque().basis(),
                                truck.torque().note())),
                Symbol.of(truck, "clutch_capacity", Parameter.CLUTCH_CAPACITY),
                Symbol.of(truck, "shock", Parameter.SHOCK_FACTOR),
                Symbol.of(truck, "d", Parameter.MAINSHAFT_DIAMETER),
                Symbol.of(truck, "tensile_yield", Parameter.YIELD),
                Symbol.of(truck, "heat_capacity", Parameter.CLUTCH_HEAT_CAPACITY),
                Symbol.of(truck, "bound", Parameter.CLUTCH_START_ENERGY));
    }

    private static Symbol ratio(String symbol, String meaning, double value) {
        return new Symbol(symbol, meaning, Figure.computed(value, Unit.RATIO, "from the ratios of the profile"));
    }
}
