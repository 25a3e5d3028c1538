package witnessmark.gearbox.exposure;

import java.util.Comparator;
import java.util.List;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gears;
import witnessmark.gearbox.Lever;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/**
 * How far the floating gears of the front section rub on the mainshaft while the wheels turn it and no gear is in.
 * Kinematics.
 *
 * @param range range left in, splitter direct
 * @param mainshaft speed of the mainshaft
 * @param gears one row for each floating gear, lever order
 * @param oilThrow whether the front countershafts throw oil
 */
public record Exposure(Mode mode, Journey journey, Range range, Figure mainshaft, List<Rub> gears, OilThrow oilThrow) {

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
            throw new QuestionRefused("range: truck " + truck.id() + " has no low range; give high");
        }
        double auxiliary = range == Range.LOW ? truck.rangeRatio() : 1;
        double mainshaft = truck.outputRpm(journey.kmh()) * auxiliary;
        List<Rub> rubs = Gears.levers(truck).stream()
                .map(lever -> rub(truck, mode, lever, mainshaft, journey))
                .toList();
        return new Exposure(
                mode,
                journey,
                range,
                Figure.computed(mainshaft, Unit.RPM, "n_main = v i_axle N_km / 60 x range ratio left in"),
                rubs,
                mode == Mode.COAST ? OilThrow.OF_IDLE : OilThrow.NONE_IN_FRONT);
    }

    /** The floating gear that rubs furthest. */
    public Rub worst() {
        return gears.stream()
                .max(Comparator.comparingDouble(rub -> rub.distance().value()))
                .orElseThrow();
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
                        gear, Unit.RPM, "n_gear = n_idle / i_main, reverse turns backwards; 0 with the engine off"),
                Figure.computed(difference, Unit.RPM, "|n_main - n_gear|"),
                Figure.computed(metresPerSecond, Unit.METRE_PER_SECOND, "rubbing speed = pi d_bore x difference / 60"),
                Figure.computed(metresPerSecond * journey.hours() * 3.6, Unit.KILOMETRE, "rubbing speed x time"));
    }
}
