package witnessmark.gearbox;

import static witnessmark.gearbox.Parameter.Bounds.possible;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The single numbers of a truck profile: how each is written, what it means, between which bounds it makes sense,
 * and what is assumed where it is not given. Order matters: an assumption may rest on the parameters above it.
 *
 * <p>What is not possible is refused, for it is nonsense (a slipped decimal, a wrong unit); what is possible but out of
 * the ordinary is asked about and still reckoned with. Bounds and defaults are judgement for a heavy tractor, from memory,
 * never data of a real one.
 */
public enum Parameter {
    LOW_RATIO(
            "gearbox.low-ratio",
            Unit.RATIO,
            possible(1, 30).usually(1.5, 15),
            "ratio of the extra low gear in the front section"),
    RANGE_RATIO("gearbox.range-ratio", Unit.RATIO, possible(1.2, 12).usually(2.5, 5), "low range against high range"),
    REVERSE_RATIO(
            "gearbox.reverse-ratio",
            Unit.RATIO,
            possible(0.5, 30).usually(1.5, 15),
            "ratio of reverse in the front section",
            TruckDraft::lowestFrontRatio,
            "taken as the lowest front ratio; usually near it"),
    AXLE_RATIO(
            "axle-ratio",
            Unit.RATIO,
            possible(1, 20).usually(2.3, 8),
            "turns of the driveline to one turn of the wheels"),
    TYRE_REVS(
            "tyre.revs-per",
            Unit.REVOLUTION_PER_KILOMETRE,
            possible(150, 800).usually(250, 420),
            "turns of the drive wheels on the road"),

    GOVERNED_RPM("engine.governed", Unit.RPM, possible(500, 6000).usually(1500, 2800), "governed engine speed"),
    IDLE_RPM(
            "engine.idle",
            Unit.RPM,
            possible(250, 1500).usually(450, 900),
            "idle speed",
            t -> 600,
            "usual for a heavy diesel"),
    LOWEST_PULLING_RPM(
            "engine.lowest-pulling",
            Unit.RPM,
            possible(300, 5000).usually(800, 1600),
            "lowest speed at which the engine should pull hard",
            t -> Math.rint(0.55 * t.resolved(GOVERNED_RPM)),
            "0.55 of governed speed; judgement, see the engine maker's figure"),
    START_RPM(
            "engine.start",
            Unit.RPM,
            possible(250, 3000).usually(600, 1500),
            "engine speed held while the clutch slips at a start",
            t -> Math.max(800, t.resolved(IDLE_RPM)),
            "800, or idle where that is higher; the driver's foot decides it"),
    PEAK_TORQUE(
            "engine.peak-torque",
            Unit.NEWTON_METRE,
            possible(100, 10_000).usually(500, 4000),
            "highest engine torque",
            TruckDraft::peakOfCurve,
            "the peak of the torque curve, or 2000 Nm where there is none; unsure by a third"),
    ENGINE_INERTIA(
            "engine.inertia",
            Unit.KILOGRAM_SQUARE_METRE,
            possible(0.05, 50).usually(0.5, 8),
            "crankshaft, flywheel and clutch cover",
            t -> 3.5,
            "heavy diesel of 11 to 15 litres; unsure by a third"),

    CLUTCH_CAPACITY(
            "clutch.capacity",
            Unit.NEWTON_METRE,
            possible(100, 20_000).usually(700, 7000),
            "torque at which the closed clutch slips",
            t -> 1.4 * t.resolved(PEAK_TORQUE),
            "1.4 times peak torque; usual when new"),
    CLUTCH_HEAT_CAPACITY(
            "clutch.heat-capacity",
            Unit.KILOJOULE_PER_KELVIN,
            possible(1, 500).usually(8, 80),
            "mass of the plates and flywheel that takes the heat, times its specific heat",
            t -> 30,
            "60 kg of iron at 0.5 kJ/(kg K); unsure by half"),
    CLUTCH_START_ENERGY(
            "clutch.start-energy",
            Unit.KILOJOULE,
            possible(1, 5000).usually(20, 300),
            "most slip energy of one ordinary start",
            t -> 60,
            "judgement for a twin-disc heavy clutch; see the clutch maker's figure"),
    DISC_LIMIT(
            "clutch.disc-limit",
            Unit.RPM,
            possible(500, 15_000).usually(2200, 6000),
            "highest speed at which the clutch maker lets the disc turn",
            t -> Math.rint(1.5 * t.resolved(GOVERNED_RPM)),
            "1.5 times governed speed; judgement, see the clutch maker's figure"),

    MASS_EMPTY(
            "masses.empty",
            Unit.KILOGRAM,
            possible(1000, 400_000).usually(4000, 40_000),
            "truck and trailer empty",
            t -> 15_000,
            "usual for a tractor with an empty trailer"),
    MASS_LOADED(
            "masses.loaded",
            Unit.KILOGRAM,
            possible(1000, 400_000).usually(7000, 150_000),
            "truck and trailer loaded",
            t -> 36_000,
            "close to the usual limit on the road"),

    MAINSHAFT_DIAMETER(
            "shafts.mainshaft",
            Unit.MILLIMETRE,
            possible(15, 250).usually(35, 110),
            "mainshaft at the spline root",
            t -> 60,
            "measure it; stress goes with its cube"),
    YIELD(
            "shafts.yield",
            Unit.MEGAPASCAL,
            possible(150, 2500).usually(500, 1600),
            "tensile yield strength of the mainshaft",
            t -> 900,
            "alloy steel core; see the steel, unsure by a fifth"),
    SHOCK_FACTOR(
            "shafts.shock",
            Unit.RATIO,
            possible(1, 5).usually(1.2, 3),
            "how far a let-in clutch overshoots its torque",
            t -> 2,
            "a load put on suddenly doubles (textbook)"),
    GEAR_BORE(
            "shafts.gear-bore",
            Unit.MILLIMETRE,
            possible(15, 300).usually(40, 140),
            "diameter on which the floating gears rub",
            t -> Math.rint(7.0 / 6 * t.resolved(MAINSHAFT_DIAMETER)),
            "a sixth over the shaft; measure it"),

    MAINSHAFT_INERTIA(
            "inertias.mainshaft",
            Unit.KILOGRAM_SQUARE_METRE,
            possible(1e-4, 20).usually(0.005, 0.5),
            "mainshaft with sliding clutches",
            t -> 0.06,
            "estimate; unsure by half, which hardly touches multiples unless the splitter moves with the range"),
    AUXILIARY_INERTIA(
            "inertias.auxiliary",
            Unit.KILOGRAM_SQUARE_METRE,
            possible(1e-4, 20).usually(0.005, 0.8),
            "auxiliary gears and countershafts, referred to the mainshaft",
            t -> 0.06,
            "estimate; unsure by half, which hardly touches multiples unless the splitter moves with the range"),
    INPUT_INERTIA(
            "inertias.input",
            Unit.KILOGRAM_SQUARE_METRE,
            possible(1e-4, 20).usually(0.02, 2),
            "input shaft, clutch discs, front countershafts and floating gears, referred to the input",
            t -> 0.35,
            "estimate; unsure by half"),

    CONE_RADIUS(
            "cone.mean-radius",
            Unit.MILLIMETRE,
            possible(10, 300).usually(50, 160),
            "mean radius of the range cone",
            t -> 90,
            "estimate; measure it"),
    CONE_ANGLE(
            "cone.half-angle",
            Unit.DEGREE,
            possible(2, 45).usually(5, 15),
            "half the angle of the range cone",
            t -> 7,
            "usual for a synchronizer cone"),
    CONE_FRICTION(
            "cone.friction",
            Unit.RATIO,
            possible(0.01, 0.6).usually(0.05, 0.2),
            "friction of the range cone in oil",
            t -> 0.10,
            "usual for a sound lining in oil"),
    PISTON_FORCE(
            "cone.piston-force",
            Unit.NEWTON,
            possible(50, 50_000).usually(500, 8000),
            "push of the range piston",
            t -> 2000,
            "about 80 mm of piston at 4 bar"),
    DRAG(
            "cone.drag",
            Unit.NEWTON_METRE,
            possible(0, 500).usually(0, 60),
            "drag of the oil on the mainshaft while the range moves",
            t -> 8,
            "warm oil; cold oil drags several times as much"),

    ROLLING_RESISTANCE(
            "road.rolling-resistance",
            Unit.RATIO,
            possible(0, 0.5).usually(0.004, 0.05),
            "rolling resistance over weight",
            t -> 0.008,
            "truck tyres on good tarmac; gravel 0.02 and more"),
    DRAG_AREA(
            "road.drag-area",
            Unit.SQUARE_METRE,
            possible(0, 30).usually(2, 12),
            "drag coefficient times frontal area",
            t -> 6,
            "0.6 times 10 square metres"),
    START_GRADE(
            "road.start-grade",
            Unit.PERCENT,
            possible(0, 40).usually(0, 20),
            "grade on which a start must be sure",
            t -> 3,
            "judgement; a yard ramp is steeper"),
    PLAN_GRADE(
            "road.plan-grade",
            Unit.PERCENT,
            possible(0, 20).usually(0, 6),
            "grade that the engine must hold right after a planned upshift",
            t -> 1,
            "judgement; gently rolling road"),
    GRIP(
            "road.grip",
            Unit.RATIO,
            possible(0.02, 1.2).usually(0.05, 0.9),
            "grip of the drive wheels, pull over the weight on them",
            t -> 0.7,
            "dry tarmac, from memory; wet 0.5, gravel 0.4, ice 0.1"),
    DRIVE_SHARE(
            "masses.drive-share",
            Unit.RATIO,
            possible(0.05, 1).usually(0.2, 0.8),
            "share of the whole weight on the drive wheels",
            t -> 0.4,
            "a loaded tractor with a trailer; empty or single it differs, weigh it");

    private static final Map<Unit, List<Unit>> OTHER_UNITS = Map.of(
            Unit.KILOGRAM, List.of(Unit.POUND),
            Unit.NEWTON_METRE, List.of(Unit.POUND_FOOT),
            Unit.MILLIMETRE, List.of(Unit.INCH),
            Unit.MEGAPASCAL, List.of(Unit.PSI),
            Unit.NEWTON, List.of(Unit.POUND_FORCE),
            Unit.REVOLUTION_PER_KILOMETRE, List.of(Unit.REVOLUTION_PER_MILE));

    /** Between which values a parameter can be at all, and between which it usually is. */
    record Bounds(double least, double usualLeast, double usualMost, double most) {
        static Bounds possible(double least, double most) {
            return new Bounds(least, least, most, most);
        }

        Bounds usually(double from, double to) {
            return new Bounds(least, from, to, most);
        }
    }

    private final String stem;
    private final Unit unit;
    private final Bounds bounds;
    private final String meaning;
    private final @Nullable ToDoubleFunction<TruckDraft> assumption;
    private final String howSure;

    Parameter(String stem, Unit unit, Bounds bounds, String meaning) {
        this(stem, unit, bounds, meaning, null, "");
    }

    Parameter(
            String stem,
            Unit unit,
            Bounds bounds,
            String meaning,
            @Nullable ToDoubleFunction<TruckDraft> assumption,
            String howSure) {
        this.stem = stem;
        this.unit = unit;
        this.bounds = bounds;
        this.meaning = meaning;
        this.assumption = assumption;
        this.howSure = howSure;
    }

    public Unit unit() {
        return unit;
    }

    public String meaning() {
        return meaning;
    }

    /** The name in a profile, in this parameter's own unit: {@code engine.idle-rpm}. */
    public String key() {
        return key(unit);
    }

    /** The name in a profile that gives the value in {@code written}: {@code masses.loaded-lb}. */
    public String key(Unit written) {
        String suffix =
                switch (written) {
                    case RATIO -> "";
                    case REVOLUTION_PER_KILOMETRE -> "km";
                    case REVOLUTION_PER_MILE -> "mile";
                    case PERCENT -> "percent";
                    case KILOJOULE_PER_KELVIN -> "kj-per-k";
                    default -> written.symbol().toLowerCase(Locale.ROOT);
                };
        return suffix.isEmpty() ? stem : stem + "-" + suffix;
    }

    /** This parameter's own unit, then the others in which it may be written. */
    public List<Unit> writtenIn() {
        return Stream.concat(Stream.of(unit), OTHER_UNITS.getOrDefault(unit, List.of()).stream())
                .toList();
    }

    boolean accepts(double value) {
        return value >= bounds.least() && value <= bounds.most();
    }

    Bounds bounds() {
        return bounds;
    }

    /** Whether a value is not out of the ordinary for a heavy truck. */
    boolean isUsual(double value) {
        return value >= bounds.usualLeast() && value <= bounds.usualMost();
    }

    /** What is ordinary, for a message. */
    String usual() {
        return span(bounds.usualLeast(), bounds.usualMost());
    }

    /** What may be given, for a message. */
    String allowed() {
        return span(bounds.least(), bounds.most());
    }

    private String span(double from, double to) {
        return plain(from) + " to " + plain(to) + (unit == Unit.RATIO ? "" : " " + unit.symbol());
    }

    String mend() {
        return "give " + meaning + ", " + allowed()
                + (assumption == null ? "" : ", or leave it out to have it assumed");
    }

    boolean required() {
        return this == AXLE_RATIO || this == GOVERNED_RPM;
    }

    /** The default's value; not a number where the parameter has none, or what it rests on is missing. */
    double assumption(TruckDraft truck) {
        return assumption == null ? Double.NaN : assumption.applyAsDouble(truck);
    }

    /** The declared default; empty where the parameter has none. */
    Optional<Figure> assumed(TruckDraft truck) {
        return Optional.ofNullable(assumption).map(rule -> Figure.assumed(rule.applyAsDouble(truck), unit, howSure));
    }

    /** A number as one writes it by hand. */
    static String plain(double value) {
        if (!Double.isFinite(value)) {
            return String.valueOf(value);
        }
        BigDecimal digits = BigDecimal.valueOf(value).stripTrailingZeros();
        return Math.abs(digits.scale()) > 12 ? digits.toString() : digits.toPlainString();
    }
}
