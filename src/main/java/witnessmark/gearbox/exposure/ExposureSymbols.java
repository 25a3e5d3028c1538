package witnessmark.gearbox.exposure;

import java.util.List;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/** What the letters in the formulas of rubbing stand for, so that every figure can be worked out again by hand. */
public final class ExposureSymbols {

    private ExposureSymbols() {}

    public static List<Symbol> of(TruckProfile truck, Exposure exposure) {
        return List.of(
                new Symbol("v", "road speed", Figure.given(exposure.journey().kmh(), Unit.KILOMETRE_PER_HOUR)),
                new Symbol("time", "rolled", Figure.given(exposure.journey().hours() * 60, Unit.MINUTE)),
                Symbol.of(truck, "i_axle", Parameter.AXLE_RATIO),
                Symbol.of(truck, "N_km", Parameter.TYRE_REVS),
                new Symbol(
                        "r_range",
                        "range ratio left in",
                        Figure.computed(
                                exposure.range() == Range.LOW ? truck.rangeRatio() : 1,
                                Unit.RATIO,
                                "from the ratios of the profile")),
                Symbol.of(truck, "n_idle", Parameter.IDLE_RPM),
                Symbol.of(truck, "n_governed", Parameter.GOVERNED_RPM),
                ratio("i_fastest", "fastest front ratio", Exposure.fastest(truck)),
                ratio(
                        "i_lever",
                        "front ratio of the worst gear, "
                                + exposure.worst().lever().name(),
                        exposure.worst().lever().ratio()),
                Symbol.of(truck, "d_bore", Parameter.GEAR_BORE));
    }

    private static Symbol ratio(String symbol, String meaning, double value) {
        return new Symbol(symbol, meaning, Figure.computed(value, Unit.RATIO, "from the ratios of the profile"));
    }
}
