package witnessmark.gearbox.exposure;

import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gears;
import witnessmark.gearbox.Lever;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.shift.ShiftVerdict;

/**
 * How far the floating gears of the front section rub on the mainshaft while the wheels turn it and no gear is in.
 * Kinematics.
 *
 * @param range range left in, splitter direct
 * @param mainshaft speed of the mainshaft
 * @param timesOrdinary that speed over the highest at which the engine turns the mainshaft at governed speed
 * @param shaft what that speed alone does
 * @param gears one row for each floating gear, lever order
 * @param oilThrow whether the front countershafts throw oil
 */
public record Exposure(
        Mode mode,
        Journey journey,
        Range range,
        Figure mainshaft,
        Figure timesOrdinary,
        ShaftSpeed shaft,
        List<Rub> gears,
        OilThrow oilThrow) {

    public enum Mode {
        /** Lever in neutral, engine idling, clutch engaged. */
        COAST,
        /** Engine off, drive wheels turning. */
        TOW
    }

    public enum OilThrow {
        /** The front countershafts turn at idle. */
        OF_IDLE("oil is thrown in the front section as at idle"),
        /** The front countershafts stand; the auxiliary may still splash the rear. */
        NONE_IN_FRONT(
                "no oil is thrown in the front section and a pump driven from it stands; the rear may be splashed");

        private final String words;

        OilThrow(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** What the speed of the mainshaft does by itself, however short the way; the bounds are those of a shift. */
    public enum ShaftSpeed {
        ORDINARY("the mainshaft turns no faster than the engine turns it in ordinary driving"),
        ABOVE_ORDINARY("the mainshaft turns faster than the engine ever turns it: slow down or stop"),
        DESTRUCTIVE(
                "the mainshaft turns so much faster than the engine ever turns it that the speed alone destroys bearings and"
                        + " floating gears, however short the way");

        private final String words;

        ShaftSpeed(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        static ShaftSpeed of(double timesOrdinary) {
            return switch (ShiftVerdict.ofSpeed(timesOrdinary)) {
                case PROPER -> ORDINARY;
                case HARD -> ABOVE_ORDINARY;
                case DESTRUCTIVE -> DESTRUCTIVE;
            };
        }
    }

    /**
     * One floating gear.
     *
     * @param onPocketBearing for a direct main gear (ratio 1): no gear floats, the input's pocket bearing takes the
     *     difference instead
     * @param gearSpeed speed of the floating gear; negative for reverse, which turns against the mainshaft
     * @param difference speed at which gear and mainshaft turn against each other
     * @param distance sliding distance over the journey
     */
    public record Rub(
            Lever lever, boolean onPocketBearing, Figure gearSpeed, Figure difference, Figure speed, Figure distance) {}

    public static Exposure of(TruckProfile truck, Mode mode, Range range, Journey journey) {
        if (range == Range.LOW && !truck.hasRange()) {
            throw new QuestionRefused("range: truck " + truck.id() + " has no low range", "give high");
        }
        double auxiliary = range == Range.LOW ? truck.rangeRatio() : 1;
        double mainshaft = truck.outputRpm(journey.kmh()) * auxiliary;
        List<Rub> rubs = Gears.levers(truck).stream()
                .map(lever -> rub(truck, mode, lever, mainshaft, journey))
                .toList();
        double ordinary = truck.value(Parameter.GOVERNED_RPM) / fastest(truck);
        return new Exposure(
                mode,
                journey,
                range,
                Figure.computed(mainshaft, Unit.RPM, "n_main = v i_axle N_km r_range / 60"),
                Figure.computed(mainshaft / ordinary, Unit.RATIO, "n_main i_fastest / n_governed"),
                ShaftSpeed.of(mainshaft / ordinary),
                rubs,
                mode == Mode.COAST ? OilThrow.OF_IDLE : OilThrow.NONE_IN_FRONT);
    }

    /** The front ratio in which the mainshaft turns fastest. */
    static double fastest(TruckProfile truck) {
        return Collections.min(truck.mainRatios());
    }

    /** The floating gear that rubs furthest. */
    public Rub worst() {
        return gears.stream()
                .max(Comparator.comparingDouble(rub -> rub.distance().value()))
                .orElseThrow();
    }

    /** The mainshaft's figures and the worst gear's by name, in the order to show them; each carries its formula. */
    public Map<String, Figure> figures() {
        Map<String, Figure> figures = new LinkedHashMap<>();
        figures.put("mainshaft speed", mainshaft);
        figures.put("over the most in ordinary driving", timesOrdinary);
        figures.put("speed of the worst gear", worst().gearSpeed());
        figures.put("against the shaft", worst().difference());
        figures.put("rubbing speed", worst().speed());
        figures.put("sliding distance", worst().distance());
        return figures;
    }

    private static Rub rub(TruckProfile truck, Mode mode, Lever lever, double mainshaft, Journey journey) {
        double idle = mode == Mode.COAST ? truck.value(Parameter.IDLE_RPM) : 0;
        double direction = lever.kind() == Lever.Kind.REVERSE ? -1 : 1;
        // Plus zero, so that a standing reverse gear is not shown as turning at -0.
        double gear = direction * idle / lever.ratio() + 0.0;
        double difference = Math.abs(mainshaft - gear);
        double metresPerSecond = Math.PI * truck.value(Parameter.GEAR_BORE) / 1000 * difference / 60;
        return new Rub(
                lever,
                lever.kind() == Lever.Kind.MAIN && lever.ratio() == 1,
                Figure.computed(
                        gear,
                        Unit.RPM,
                        mode == Mode.TOW
                                ? "n_gear = 0; the engine is off"
                                : direction < 0
                                        ? "n_gear = -n_idle / i_lever; reverse turns backwards"
                                        : "n_gear = n_idle / i_lever"),
                Figure.computed(difference, Unit.RPM, "n_rub = abs(n_main - n_gear)"),
                Figure.computed(metresPerSecond, Unit.METRE_PER_SECOND, "v_rub = pi d_bore n_rub / 60000"),
                Figure.computed(metresPerSecond * journey.hours() * 3.6, Unit.KILOMETRE, "60 v_rub time / 1000"));
    }
}
