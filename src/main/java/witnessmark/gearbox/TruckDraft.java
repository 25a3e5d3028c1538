package witnessmark.gearbox;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A truck profile in the making: takes what is known, fills in declared assumptions, and names every fault at once.
 */
public final class TruckDraft {

    private final String id;
    private String title;
    private final Map<String, String> titles = new TreeMap<>();
    private List<Double> mainRatios = List.of();
    private Optional<Splitter> splitter = Optional.empty();
    private Optional<String> tyreSize = Optional.empty();
    private TreeMap<Double, Double> curve = new TreeMap<>();
    private final Map<Parameter, Double> given = new EnumMap<>(Parameter.class);

    private TruckDraft(String id) {
        this.id = id;
        this.title = id;
    }

    public static TruckDraft named(String id) {
        return new TruckDraft(id);
    }

    public TruckDraft title(String words) {
        title = words;
        return this;
    }

    /** The title in another language, by its tag. */
    public TruckDraft titleIn(String language, String words) {
        titles.put(language, words);
        return this;
    }

    /** Ratios of the front section that repeat in both ranges, highest number (slowest gear) first. */
    public TruckDraft mainRatios(List<Double> highestFirst) {
        mainRatios = List.copyOf(highestFirst);
        return this;
    }

    public TruckDraft splitter(double ratio, boolean bothRanges) {
        splitter = Optional.of(new Splitter(ratio, bothRanges));
        return this;
    }

    /** A tyre size as on the side wall, in place of revolutions per kilometre. */
    public TruckDraft tyreSize(String code) {
        tyreSize = Optional.of(code);
        return this;
    }

    /** Full-load torque in newton metres by revolutions per minute. */
    public TruckDraft torqueCurve(Map<Double, Double> newtonMetresByRpm) {
        curve = new TreeMap<>(newtonMetresByRpm);
        return this;
    }

    /** Gives a parameter in its own unit. */
    public TruckDraft set(Parameter parameter, double value) {
        return set(parameter, value, parameter.unit());
    }

    /** Gives a parameter in another unit of its quantity; nonsense is kept, for {@link #faults} to name. */
    public TruckDraft set(Parameter parameter, double value, Unit unit) {
        given.put(parameter, unit.convert(value, parameter.unit()));
        return this;
    }

    /** Every fault of what was given; empty where a profile can be built. */
    public List<ProfileFault> faults() {
        return ProfileCheck.faults(this);
    }

    /** The profile, with assumptions for what was not given; throws {@link ProfileRefused} with every fault. */
    public TruckProfile build() {
        List<ProfileFault> faults = faults();
        if (!faults.isEmpty()) {
            throw new ProfileRefused(faults);
        }
        Map<Parameter, Figure> all = new EnumMap<>(Parameter.class);
        for (Parameter parameter : Parameter.values()) {
            figure(parameter).ifPresent(figure -> all.put(parameter, figure));
        }
        return new TruckProfile(
                id, title, titles, mainRatios, splitter, tyreSize, torqueCurve(), all, ProfileCheck.questions(this));
    }

    private Optional<Figure> figure(Parameter parameter) {
        if (given.containsKey(parameter)) {
            return Optional.of(Figure.given(given.get(parameter), parameter.unit()));
        }
        if (parameter == Parameter.TYRE_REVS) {
            return tyreSize.flatMap(TyreSize::parse).map(TyreSize::revsPerKm);
        }
        if (parameter == Parameter.PEAK_TORQUE && !curve.isEmpty()) {
            return Optional.of(Figure.computed(peakOfCurve(), parameter.unit(), "the peak of the torque curve"));
        }
        return parameter.assumed(this);
    }

    /** The value as given or assumed; not a number where there is none. */
    double resolved(Parameter parameter) {
        return given.containsKey(parameter) ? given.get(parameter) : parameter.assumption(this);
    }

    double lowestFrontRatio() {
        double highestMain = mainRatios.isEmpty() ? Double.NaN : mainRatios.get(0);
        return Math.max(highestMain, given.getOrDefault(Parameter.LOW_RATIO, 0.0));
    }

    double peakOfCurve() {
        return curve.values().stream().max(Double::compare).orElse(2000.0);
    }

    String id() {
        return id;
    }

    Map<String, String> titles() {
        return titles;
    }

    String title() {
        return title;
    }

    List<Double> mainRatios() {
        return mainRatios;
    }

    Optional<Splitter> splitter() {
        return splitter;
    }

    Optional<String> tyreSize() {
        return tyreSize;
    }

    Map<Double, Double> curve() {
        return curve;
    }

    Map<Parameter, Double> given() {
        return given;
    }

    private TorqueCurve torqueCurve() {
        return curve.isEmpty()
                ? TorqueCurve.shapedAround(
                        resolved(Parameter.PEAK_TORQUE),
                        resolved(Parameter.IDLE_RPM),
                        resolved(Parameter.LOWEST_PULLING_RPM),
                        resolved(Parameter.GOVERNED_RPM))
                : new TorqueCurve(curve, Basis.GIVEN, "");
    }
}
