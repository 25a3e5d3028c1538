package witnessmark.gearbox;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One truck's numbers, each given or assumed; made by {@link TruckDraft}, which checks them.
 *
 * @param titles the title in other languages, by their tag; {@code title} where there is none
 * @param mainRatios ratios of the front section that repeat in both ranges, highest number first
 * @param splitter empty where the box has none
 * @param tyreSize the size code where the tyre was given by it
 * @param figures every parameter that is known or assumed; low and range ratio are missing where the box has none
 * @param questions what is possible but out of the ordinary, to be asked of whoever gave it; empty for an ordinary truck
 */
public record TruckProfile(
        String id,
        String title,
        Map<String, String> titles,
        List<Double> mainRatios,
        Optional<Splitter> splitter,
        Optional<String> tyreSize,
        TorqueCurve torque,
        Map<Parameter, Figure> figures,
        List<ProfileFault> questions) {

    public TruckProfile {
        titles = Map.copyOf(titles);
        mainRatios = List.copyOf(mainRatios);
        questions = List.copyOf(questions);
        figures = Collections.unmodifiableMap(new EnumMap<>(figures));
    }

    /** The title in a language, by its tag. */
    public String titleIn(String language) {
        return titles.getOrDefault(language, title);
    }

    /** The figure of a parameter; throws where the truck has none (low or range ratio). */
    public Figure figure(Parameter parameter) {
        Figure figure = figures.get(parameter);
        if (figure == null) {
            throw new IllegalArgumentException(parameter.key() + ": truck " + id + " has none");
        }
        return figure;
    }

    /** The value in the parameter's own unit; throws as {@link #figure} does. */
    public double value(Parameter parameter) {
        return figure(parameter).value();
    }

    public boolean has(Parameter parameter) {
        return figures.containsKey(parameter);
    }

    public boolean hasRange() {
        return has(Parameter.RANGE_RATIO);
    }

    /** Low range against high range; 1 where the box has no range. */
    public double rangeRatio() {
        return hasRange() ? value(Parameter.RANGE_RATIO) : 1;
    }

    public Gears gears() {
        return Gears.of(this);
    }

    /** Rolling radius in metres, from the turns in a kilometre. */
    public double wheelRadiusMetres() {
        return 1000 / (2 * Math.PI * value(Parameter.TYRE_REVS));
    }

    /** Speed of the output shaft, in revolutions per minute, at a road speed. */
    public double outputRpm(double kmh) {
        return kmh / 60 * value(Parameter.TYRE_REVS) * value(Parameter.AXLE_RATIO);
    }

    /** Road speed in km/h at a speed of the output shaft. */
    public double roadKmh(double outputRpm) {
        return outputRpm * 60 / (value(Parameter.TYRE_REVS) * value(Parameter.AXLE_RATIO));
    }

    /** The layout as far as ratios tell it; how the range is shifted is not among them. */
    public Layout layout() {
        Layout.Splitter split = splitter.map(s -> s.bothRanges() ? Layout.Splitter.BOTH : Layout.Splitter.HIGH_ONLY)
                .orElse(Layout.Splitter.NONE);
        Layout unknown = Layout.unknown();
        return new Layout(
                OptionalInt.of(gears().forward().size()),
                hasRange() ? Optional.empty() : Optional.of(Layout.RangeShift.NONE),
                Optional.of(split),
                unknown.countershafts(),
                unknown.linkage(),
                unknown.oilPump(),
                unknown.oilCooler(),
                unknown.powerTakeOff());
    }
}
