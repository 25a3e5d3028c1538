package witnessmark.gearbox.shift;

import java.util.ArrayList;
import java.util.List;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;

/** What the letters in a shift's formulas stand for, so that every figure can be worked out again by hand. */
public final class ShiftSymbols {

    private ShiftSymbols() {}

    public static List<Symbol> of(TruckProfile truck, RangeShiftQuestion question) {
        List<Symbol> symbols = new ArrayList<>(road(truck, question.roadKmh()));
        symbols.add(ratio(
                "i_main",
                "front ratio of gear " + question.to().id(),
                question.to().lever().ratio()));
        symbols.add(ratio("before", "auxiliary ratio before", question.from().auxiliaryRatio()));
        symbols.add(ratio("after", "auxiliary ratio after", question.auxiliaryAfter(truck)));
        symbols.add(ratio("R", "range ratio", truck.rangeRatio()));
        symbols.addAll(stages(truck, question));
        symbols.addAll(proper(truck, question.lowGear(), "low", "the low-range gear of the two"));
        symbols.addAll(proper(truck, WorkCone.hardestProper(truck), "hardest", "hardest proper shift, at its ceiling"));
        symbols.addAll(inertias(truck, question));
        symbols.add(Symbol.of(truck, "mu", Parameter.CONE_FRICTION));
        symbols.add(Symbol.of(truck, "F", Parameter.PISTON_FORCE));
        symbols.add(Symbol.of(truck, "r_mean", Parameter.CONE_RADIUS));
        symbols.add(Symbol.of(truck, "half_angle", Parameter.CONE_ANGLE));
        symbols.add(Symbol.of(truck, "drag", Parameter.DRAG));
        return List.copyOf(symbols);
    }

    /** Range and splitter each by itself, before, after, and while the cone works. */
    private static List<Symbol> stages(TruckProfile truck, RangeShiftQuestion question) {
        double range = truck.rangeRatio();
        boolean down = question.to().range() == Range.LOW;
        List<Symbol> stages = new ArrayList<>(List.of(
                ratio("r_after", "range ratio after", down ? range : 1),
                ratio("s_cone", "splitter ratio while the cone works", question.splitWhileConeWorks(truck))));
        if (question.splitterMoves()) {
            stages.add(ratio("r_before", "range ratio before", down ? 1 : range));
            stages.add(
                    ratio("s_before", "splitter ratio before", question.from().splitRatio(truck)));
            stages.add(ratio("s_after", "splitter ratio after", question.to().splitRatio(truck)));
        }
        return stages;
    }

    private static List<Symbol> proper(TruckProfile truck, Gear gear, String which, String meaning) {
        return List.of(
                ratio("i_" + which, "whole ratio of gear " + gear.id() + ", " + meaning, gear.ratio()),
                ratio("s_" + which, "splitter ratio in it", gear.splitRatio(truck)));
    }

    public static List<Symbol> of(TruckProfile truck, InRangeShift shift) {
        List<Symbol> symbols = new ArrayList<>(road(truck, shift.roadSpeed().value()));
        symbols.add(ratio(
                "i_from",
                "whole ratio of gear " + shift.from().id(),
                shift.from().ratio()));
        symbols.add(ratio(
                "i_to", "whole ratio of gear " + shift.to().id(), shift.to().ratio()));
        if (shift.dogSpeedDifference().isPresent()) {
            symbols.add(ratio("before", "auxiliary ratio before", shift.from().auxiliaryRatio()));
            symbols.add(ratio("after", "auxiliary ratio after", shift.to().auxiliaryRatio()));
        }
        return List.copyOf(symbols);
    }

    private static List<Symbol> road(TruckProfile truck, double kmh) {
        return List.of(
                new Symbol("v", "road speed", Figure.given(kmh, Unit.KILOMETRE_PER_HOUR)),
                Symbol.of(truck, "i_axle", Parameter.AXLE_RATIO),
                Symbol.of(truck, "N_km", Parameter.TYRE_REVS),
                Symbol.of(truck, "n_governed", Parameter.GOVERNED_RPM));
    }

    private static List<Symbol> inertias(TruckProfile truck, RangeShiftQuestion question) {
        List<Symbol> symbols = new ArrayList<>(List.of(
                Symbol.of(truck, "J_mainshaft", Parameter.MAINSHAFT_INERTIA),
                Symbol.of(truck, "J_auxiliary", Parameter.AUXILIARY_INERTIA)));
        if (question.lever() == LeverTiming.LEVER_HOME_FIRST) {
            symbols.add(Symbol.of(truck, "J_input", Parameter.INPUT_INERTIA));
            if (question.clutch() == Clutch.ENGAGED) {
                symbols.add(Symbol.of(truck, "J_engine", Parameter.ENGINE_INERTIA));
            }
        }
        if (question.lever() == LeverTiming.LEVER_HOME_FIRST && question.againstTheGear()) {
            symbols.add(Symbol.of(truck, "n_idle", Parameter.IDLE_RPM));
        }
        return symbols;
    }

    private static Symbol ratio(String symbol, String meaning, double value) {
        return new Symbol(symbol, meaning, Figure.computed(value, Unit.RATIO, "from the ratios of the profile"));
    }
}
