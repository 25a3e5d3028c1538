package witnessmark.gearbox;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Units used in the workshop, each with its quantity and its size in the quantity's base unit.
 * Factors are exact by definition (inch, pound, gallon, mile: international yard and pound agreement 1959;
 * psi from pound-force and inch; degree Fahrenheit by definition; Btu of the International Table, 1956).
 */
public enum Unit {
    PASCAL("Pa", Quantity.PRESSURE, 1),
    KILOPASCAL("kPa", Quantity.PRESSURE, 1e3),
    MEGAPASCAL("MPa", Quantity.PRESSURE, 1e6),
    BAR("bar", Quantity.PRESSURE, 1e5),
    PSI("psi", Quantity.PRESSURE, 0.45359237 * 9.80665 / (0.0254 * 0.0254)),
    CELSIUS("degC", Quantity.TEMPERATURE, 1, 0),
    FAHRENHEIT("degF", Quantity.TEMPERATURE, 5.0 / 9.0, -32 * 5.0 / 9.0),
    MILLIMETRE("mm", Quantity.LENGTH, 1e-3),
    MICROMETRE("um", Quantity.LENGTH, 1e-6),
    INCH("in", Quantity.LENGTH, 0.0254),
    METRE("m", Quantity.LENGTH, 1),
    KILOMETRE("km", Quantity.LENGTH, 1e3),
    MILE("mi", Quantity.LENGTH, 1609.344),
    DEGREE("deg", Quantity.ANGLE, 1),
    NEWTON_METRE("Nm", Quantity.TORQUE, 1),
    POUND_FOOT("lbft", Quantity.TORQUE, 0.45359237 * 9.80665 * 0.3048),
    KILOMETRE_PER_HOUR("km/h", Quantity.SPEED, 1 / 3.6),
    MILE_PER_HOUR("mph", Quantity.SPEED, 0.44704),
    RPM("rpm", Quantity.ROTATION, 1),
    SECOND("s", Quantity.TIME, 1),
    MILLISECOND("ms", Quantity.TIME, 1e-3),
    MINUTE("min", Quantity.TIME, 60),
    HOUR("h", Quantity.TIME, 3600),
    LITRE("L", Quantity.VOLUME, 1),
    US_GALLON("gal", Quantity.VOLUME, 3.785411784),
    US_QUART("qt", Quantity.VOLUME, 3.785411784 / 4),
    LITRE_PER_MINUTE("l/min", Quantity.FLOW, 1),
    GRAM("g", Quantity.MASS, 1e-3),
    KILOGRAM("kg", Quantity.MASS, 1),
    POUND("lb", Quantity.MASS, 0.45359237),
    PERCENT("%", Quantity.FRACTION, 1e-2),
    PARTS_PER_MILLION("ppm", Quantity.FRACTION, 1e-6),
    MILLIGRAM_PER_KILOGRAM("mg/kg", Quantity.FRACTION, 1e-6),
    SQUARE_MILLIMETRE_PER_SECOND("mm2/s", Quantity.VISCOSITY, 1),
    CENTISTOKES("cSt", Quantity.VISCOSITY, 1),
    MILLIGRAM_POTASSIUM_HYDROXIDE_PER_GRAM("mgKOH/g", Quantity.ACID_NUMBER, 1),
    COUNT("count", Quantity.COUNT, 1),
    ROCKWELL_C("HRC", Quantity.HARDNESS_ROCKWELL_C, 1),
    VICKERS("HV", Quantity.HARDNESS_VICKERS, 1),
    WATT("W", Quantity.POWER, 1),
    KILOWATT("kW", Quantity.POWER, 1e3),
    JOULE("J", Quantity.ENERGY, 1),
    KILOJOULE("kJ", Quantity.ENERGY, 1e3),
    BRITISH_THERMAL_UNIT("Btu", Quantity.ENERGY, 1055.05585262),
    KILOJOULE_PER_KELVIN("kJ/K", Quantity.HEAT_CAPACITY, 1),
    CELSIUS_CHANGE("degC change", Quantity.TEMPERATURE_CHANGE, 1),
    FAHRENHEIT_CHANGE("degF change", Quantity.TEMPERATURE_CHANGE, 5.0 / 9.0),
    NEWTON("N", Quantity.FORCE, 1),
    POUND_FORCE("lbf", Quantity.FORCE, 0.45359237 * 9.80665),
    KILOGRAM_SQUARE_METRE("kgm2", Quantity.INERTIA, 1),
    METRE_PER_SECOND("m/s", Quantity.SPEED, 1),
    FOOT_PER_SECOND("ft/s", Quantity.SPEED, 0.3048),
    METRE_PER_SECOND_SQUARED("m/s2", Quantity.ACCELERATION, 1),
    KILOMETRE_PER_HOUR_PER_SECOND("km/h per s", Quantity.ACCELERATION, 1 / 3.6),
    MILE_PER_HOUR_PER_SECOND("mph per s", Quantity.ACCELERATION, 0.44704),
    RADIAN_PER_SECOND_SQUARED("rad/s2", Quantity.ANGULAR_ACCELERATION, 1),
    SQUARE_METRE("m2", Quantity.AREA, 1),
    REVOLUTION_PER_KILOMETRE("rev/km", Quantity.TURNS_PER_LENGTH, 1e-3),
    REVOLUTION_PER_MILE("rev/mi", Quantity.TURNS_PER_LENGTH, 1 / 1609.344),
    RATIO(":1", Quantity.RATIO, 1);

    /** What a unit measures; only units of one quantity convert into each other. */
    public enum Quantity {
        PRESSURE,
        TEMPERATURE,
        LENGTH,
        ANGLE,
        TORQUE,
        SPEED,
        ROTATION,
        TIME,
        VOLUME,
        FLOW,
        MASS,
        FRACTION,
        VISCOSITY,
        ACID_NUMBER,
        COUNT,
        HARDNESS_ROCKWELL_C,
        HARDNESS_VICKERS,
        POWER,
        ENERGY,
        HEAT_CAPACITY,
        TEMPERATURE_CHANGE,
        FORCE,
        INERTIA,
        ACCELERATION,
        ANGULAR_ACCELERATION,
        AREA,
        TURNS_PER_LENGTH,
        RATIO
    }

    /** All symbols, for messages. */
    public static final String SYMBOLS =
            Arrays.stream(values()).map(Unit::symbol).collect(Collectors.joining(" "));

    private final String symbol;
    private final Quantity quantity;
    private final double factor;
    private final double offset;

    Unit(String symbol, Quantity quantity, double factor) {
        this(symbol, quantity, factor, 0);
    }

    Unit(String symbol, Quantity quantity, double factor, double offset) {
        this.symbol = symbol;
        this.quantity = quantity;
        this.factor = factor;
        this.offset = offset;
    }

    public String symbol() {
        return symbol;
    }

    public Quantity quantity() {
        return quantity;
    }

    /** The value in {@code target}; throws where the two measure different quantities. */
    public double convert(double value, Unit target) {
        if (target.quantity != quantity) {
            throw new IllegalArgumentException("unit: " + symbol + " measures "
                    + quantity.name().toLowerCase(Locale.ROOT).replace('_', ' ') + " and does not convert to "
                    + target.symbol);
        }
        return target == this ? value : (value * factor + offset - target.offset) / target.factor;
    }

    /**
     * The unit of this quantity that is written so; empty if none is. Of air and oil pressure the trade says pounds, and means
     * pounds per square inch (common practice, no source).
     */
    public static Optional<Unit> parse(String text, Quantity quantity) {
        Optional<Unit> named = parse(text);
        boolean pounds = quantity == Quantity.PRESSURE && named.equals(Optional.of(POUND));
        return pounds ? Optional.of(PSI) : named.filter(unit -> unit.quantity == quantity);
    }

    /** The symbols of all units of this quantity, for messages. */
    public static String symbols(Quantity quantity) {
        return Arrays.stream(values())
                .filter(unit -> unit.quantity == quantity)
                .map(Unit::symbol)
                .collect(Collectors.joining(", "));
    }

    /** The unit written so in the workshop, case and a few common spellings aside; empty if not known. */
    public static Optional<Unit> parse(String text) {
        String plain = text.strip();
        String spelled =
                switch (plain.toLowerCase(Locale.ROOT)) {
                    case "c", "°c", "deg c", "celsius" -> "degC";
                    case "f", "°f", "deg f", "fahrenheit" -> "degF";
                    case "n·m", "n.m", "n m" -> "Nm";
                    case "lb-ft", "lb·ft", "ft-lb", "ft·lb", "ftlb", "lb ft" -> "lbft";
                    case "µm", "μm", "micron" -> "um";
                    case "°", "degrees", "degree" -> "deg";
                    case "kph", "kmh" -> "km/h";
                    case "r/min", "1/min" -> "rpm";
                    case "gal(us)" -> "gal";
                    case "mm²/s" -> "mm2/s";
                    case "inch", "inches", "\"" -> "in";
                    case "miles" -> "mi";
                    case "sec", "secs", "second", "seconds" -> "s";
                    case "minutes" -> "min";
                    case "litre", "litres", "liter", "liters" -> "L";
                    case "quart", "quarts" -> "qt";
                    case "pound", "pounds", "lbs", "libra", "libras" -> "lb";
                    case "l" -> "L";
                    default -> plain;
                };
        Optional<Unit> exact =
                Arrays.stream(values()).filter(u -> u.symbol.equals(spelled)).findFirst();
        return exact.isPresent()
                ? exact
                : Arrays.stream(values())
                        .filter(u -> u.symbol.equalsIgnoreCase(spelled))
                        .findFirst();
    }
}
