package witnessmark.gearbox;

import static witnessmark.gearbox.Parameter.plain;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Looks a draft through: gathers all of its faults, or what is to be asked about it. */
final class ProfileCheck {

    private static final String RATIOS = "gearbox.main-ratios";
    private static final String CURVE = "engine.torque-curve";
    private static final int MOST_MAIN_RATIOS = 12;

    private final TruckDraft draft;
    private final List<ProfileFault> faults = new ArrayList<>();

    private ProfileCheck(TruckDraft draft) {
        this.draft = draft;
    }

    static List<ProfileFault> faults(TruckDraft draft) {
        ProfileCheck check = new ProfileCheck(draft);
        check.names();
        check.mainRatios();
        check.lowAndRange();
        check.splitter();
        check.tyre();
        check.bounds();
        check.speeds();
        check.torque();
        check.masses();
        check.bore();
        return List.copyOf(check.faults);
    }

    /** What can be but is out of the ordinary, to be asked about; for a draft without faults. */
    static List<ProfileFault> questions(TruckDraft draft) {
        ProfileCheck check = new ProfileCheck(draft);
        check.unusualParameters();
        check.unusualRatios();
        check.overlap();
        check.unusualClutch();
        check.unusualCurve();
        check.unusualBore();
        return List.copyOf(check.faults);
    }

    private void unusualParameters() {
        for (Parameter parameter : Parameter.values()) {
            Double value = draft.given().get(parameter);
            if (parameter == Parameter.TYRE_REVS) {
                unusualTyre();
            } else if (value != null && !parameter.isUsual(value)) {
                fault(
                        parameter.key(),
                        plain(value) + " is unusual for " + parameter.meaning() + ", which is mostly "
                                + parameter.usual(),
                        "is it right, and in the right unit?");
            }
        }
    }

    private void unusualTyre() {
        Parameter tyre = Parameter.TYRE_REVS;
        double revs = draft.tyreSize()
                .flatMap(TyreSize::parse)
                .map(size -> size.revsPerKm().value())
                .orElseGet(() -> draft.given().get(tyre));
        if (!tyre.isUsual(revs)) {
            double ifPerMile = Unit.REVOLUTION_PER_MILE.convert(revs, Unit.REVOLUTION_PER_KILOMETRE);
            fault(
                    draft.tyreSize().isPresent() ? "tyre.size" : tyre.key(),
                    plain(Math.rint(revs * 10) / 10) + " turns in a kilometre are unusual, a truck's drive wheel makes "
                            + tyre.usual(),
                    tyre.isUsual(ifPerMile) && draft.tyreSize().isEmpty()
                            ? "is it per mile? then give it as " + tyre.key(Unit.REVOLUTION_PER_MILE)
                            : "is it right, and of the drive wheels?");
        }
    }

    private void unusualRatios() {
        for (double ratio : draft.mainRatios()) {
            if (ratio < 0.6 || ratio > 15) {
                fault(
                        RATIOS,
                        plain(ratio) + " is unusual for a front ratio, which is mostly 0.6 to 15",
                        "is it input turns to one mainshaft turn?");
            }
        }
        draft.splitter().ifPresent(splitter -> {
            double step = Math.max(splitter.ratio(), 1 / splitter.ratio());
            if (step < 1.1 || step > 1.45) {
                fault(
                        "gearbox.splitter.ratio",
                        plain(splitter.ratio()) + " is unusual: a splitter step is mostly 1.1 to 1.45",
                        "is it right?");
            }
        });
    }

    /** An overdrive on high range alone only lengthens the gears above; any other splitter narrows what lies between. */
    private void overlap() {
        Double range = draft.given().get(Parameter.RANGE_RATIO);
        draft.splitter()
                .filter(splitter -> range != null && (splitter.bothRanges() || !splitter.overdrive()))
                .map(splitter -> span() * Math.max(splitter.ratio(), 1 / splitter.ratio()))
                .filter(reach -> range <= reach)
                .ifPresent(reach -> fault(
                        Parameter.RANGE_RATIO.key(),
                        plain(range) + " is not above the spread of the main ratios with the splitter's step, "
                                + plain(Math.rint(reach * 1000) / 1000) + ", so that split gears of low and high range"
                                + " overlap",
                        "are range, main ratios and splitter right?"));
    }

    private void unusualClutch() {
        double capacity = draft.resolved(Parameter.CLUTCH_CAPACITY);
        double peak = draft.resolved(Parameter.PEAK_TORQUE);
        if (capacity < peak) {
            fault(
                    Parameter.CLUTCH_CAPACITY.key(),
                    plain(Math.rint(capacity)) + " Nm is below the engine's peak torque, " + plain(Math.rint(peak))
                            + " Nm, so that the closed clutch would slip at full throttle",
                    "is it the torque at which it slips, and in the right unit?");
        }
    }

    private void unusualCurve() {
        double start = draft.resolved(Parameter.START_RPM);
        draft.curve().keySet().stream()
                .min(Double::compare)
                .filter(first -> first > start)
                .ifPresent(first -> fault(
                        CURVE,
                        "it begins at " + plain(first) + " rpm, above the " + plain(start)
                                + " rpm held at a start, where torque is taken to fall with speed",
                        "can a point be given there?"));
    }

    private void unusualBore() {
        double bore = draft.resolved(Parameter.GEAR_BORE);
        double shaft = draft.resolved(Parameter.MAINSHAFT_DIAMETER);
        if (bore > 2 * shaft) {
            fault(
                    Parameter.GEAR_BORE.key(),
                    plain(bore) + " mm is more than twice the mainshaft, " + plain(shaft) + " mm",
                    "is it the diameter on which the floating gears rub?");
        }
    }

    private void fault(String where, String what, String mend) {
        faults.add(new ProfileFault(where, what, mend));
    }

    private void names() {
        if (!draft.id().matches("[a-z0-9]+(-[a-z0-9]+)*") || draft.id().length() > 60) {
            fault(
                    "truck",
                    "this name cannot be used",
                    "use lower-case words and numbers joined by hyphens, at most 60 characters");
        }
        title("title", draft.title());
        draft.titles().forEach((language, words) -> title("title-" + language, words));
    }

    private void title(String where, String words) {
        if (words.isBlank() || words.length() > 120) {
            fault(where, "this title cannot be used", "give 1 to 120 characters");
        }
    }

    private void mainRatios() {
        List<Double> ratios = draft.mainRatios();
        if (ratios.isEmpty() || ratios.size() > MOST_MAIN_RATIOS) {
            fault(
                    RATIOS,
                    ratios.size() + " ratios given",
                    "give 1 to " + MOST_MAIN_RATIOS + " ratios, highest number first");
        }
        for (int i = 0; i < ratios.size(); i++) {
            double ratio = ratios.get(i);
            String where = RATIOS + "[" + (i + 1) + "]";
            if (!(ratio >= 0.3 && ratio <= 30)) {
                fault(
                        where,
                        "ratio " + plain(ratio) + " is not from 0.3 to 30",
                        "give input turns to one mainshaft turn, from the tooth counts");
            } else if (i > 0 && ratio >= ratios.get(i - 1)) {
                fault(
                        where,
                        "ratio " + plain(ratio) + " is not below the " + plain(ratios.get(i - 1)) + " before it",
                        "give the ratios highest number first, each once");
            }
        }
    }

    private double span() {
        List<Double> ratios = draft.mainRatios();
        return ratios.isEmpty() ? Double.NaN : ratios.get(0) / ratios.get(ratios.size() - 1);
    }

    private void lowAndRange() {
        Double low = draft.given().get(Parameter.LOW_RATIO);
        if (low != null
                && !draft.mainRatios().isEmpty()
                && low <= draft.mainRatios().get(0)) {
            fault(
                    Parameter.LOW_RATIO.key(),
                    plain(low) + " is not above the first main ratio "
                            + plain(draft.mainRatios().get(0)),
                    "give the ratio of the extra low gear, or leave it out where the box has none");
        }
        Double range = draft.given().get(Parameter.RANGE_RATIO);
        if (range != null && range <= span()) {
            fault(
                    Parameter.RANGE_RATIO.key(),
                    plain(range) + " is not above the spread of the main ratios, first over last, "
                            + plain(Math.rint(span() * 1000) / 1000) + ", so that low and high range would overlap",
                    "check the range ratio and the main ratios against the tooth counts");
        }
    }

    private void splitter() {
        draft.splitter().ifPresent(splitter -> {
            double ratio = splitter.ratio();
            double step = Math.max(ratio, 1 / ratio);
            if (!(step > 1 && step <= 2)) {
                fault(
                        "gearbox.splitter.ratio",
                        plain(ratio) + " is not a splitter ratio",
                        "give 0.5 to below 1 for an overdrive, above 1 to 2 for an underdrive, or leave the splitter out");
            } else if (step >= smallestLeverStep()) {
                fault(
                        "gearbox.splitter.ratio",
                        plain(ratio) + " makes a bigger step than the lever does between two gears",
                        "check it and the main ratios: a split step is about the square root of a lever step");
            }
        });
    }

    private double smallestLeverStep() {
        List<Double> ratios = draft.mainRatios();
        double smallest = Double.POSITIVE_INFINITY;
        for (int i = 1; i < ratios.size(); i++) {
            double step = ratios.get(i - 1) / ratios.get(i);
            // Ratios that do not descend are told of as such, not again by the splitter.
            smallest = step > 1 ? Math.min(smallest, step) : smallest;
        }
        return smallest;
    }

    private void tyre() {
        boolean counted = draft.given().containsKey(Parameter.TYRE_REVS);
        if (draft.tyreSize().isPresent() && counted) {
            fault("tyre", "both a size and revolutions are given", "give one; revolutions are the surer");
        } else if (draft.tyreSize().isEmpty() && !counted) {
            fault(
                    "tyre",
                    "no tyre is given",
                    "give revs-per-km, revs-per-mile, or size as on the side wall: 295/80R22.5");
        }
        draft.tyreSize()
                .filter(size -> TyreSize.parse(size).isEmpty())
                .ifPresent(size -> fault(
                        "tyre.size",
                        "'" + size + "' is not a radial tyre size",
                        "write it as 295/80R22.5 or 11R22.5, or give revs-per-km"));
    }

    private void bounds() {
        for (Parameter parameter : Parameter.values()) {
            Double value = draft.given().get(parameter);
            if (value == null && parameter.required()) {
                fault(parameter.key(), "missing", parameter.mend());
            } else if (value != null && !parameter.accepts(value)) {
                fault(parameter.key(), plain(value) + " is not from " + parameter.allowed(), parameter.mend());
            }
        }
    }

    private void speeds() {
        double idle = draft.resolved(Parameter.IDLE_RPM);
        double pulling = draft.resolved(Parameter.LOWEST_PULLING_RPM);
        double governed = draft.resolved(Parameter.GOVERNED_RPM);
        double start = draft.resolved(Parameter.START_RPM);
        below(Parameter.IDLE_RPM, idle, Parameter.LOWEST_PULLING_RPM, pulling);
        below(Parameter.LOWEST_PULLING_RPM, pulling, Parameter.GOVERNED_RPM, governed);
        if (start < idle || start >= governed) {
            fault(
                    Parameter.START_RPM.key(),
                    plain(start) + " rpm does not lie between idle " + plain(idle) + " and governed " + plain(governed)
                            + " rpm",
                    "give the engine speed held while the clutch slips");
        }
    }

    private void below(Parameter lower, double low, Parameter upper, double high) {
        if (low >= high) {
            fault(
                    lower.key(),
                    plain(low) + " rpm is not below " + upper.key() + " " + plain(high),
                    "give idle, lowest pulling and governed speed in rising order");
        }
    }

    private void torque() {
        for (Map.Entry<Double, Double> point : draft.curve().entrySet()) {
            if (!(point.getKey() >= 250
                    && point.getKey() <= 6000
                    && point.getValue() >= 50
                    && point.getValue() <= 10_000)) {
                fault(
                        CURVE,
                        "point " + plain(point.getKey()) + " rpm: " + plain(point.getValue()) + " Nm is out of bounds",
                        "give 250 to 6000 rpm and 50 to 10000 Nm");
            }
        }
        if (draft.curve().size() == 1) {
            fault(CURVE, "one point is no curve", "give two points or more, or peak-torque-nm instead");
        }
        Double peak = draft.given().get(Parameter.PEAK_TORQUE);
        if (peak != null && !draft.curve().isEmpty() && Math.abs(peak - draft.peakOfCurve()) > 0.02 * peak) {
            fault(
                    Parameter.PEAK_TORQUE.key(),
                    plain(peak) + " Nm is not the peak of the torque curve, " + plain(draft.peakOfCurve()) + " Nm",
                    "give one of the two, or make them agree");
        }
    }

    private void bore() {
        double bore = draft.resolved(Parameter.GEAR_BORE);
        double shaft = draft.resolved(Parameter.MAINSHAFT_DIAMETER);
        if (bore <= shaft) {
            fault(
                    Parameter.GEAR_BORE.key(),
                    plain(bore) + " mm does not go over the mainshaft, " + plain(shaft) + " mm at the spline root",
                    "give the diameter on which the floating gears rub, or leave it out to have it assumed");
        }
    }

    private void masses() {
        double empty = draft.resolved(Parameter.MASS_EMPTY);
        double loaded = draft.resolved(Parameter.MASS_LOADED);
        if (empty > loaded) {
            fault(
                    Parameter.MASS_EMPTY.key(),
                    plain(empty) + " kg is more than the loaded mass, " + plain(loaded) + " kg",
                    "give the whole truck and trailer, empty and loaded");
        }
    }
}
