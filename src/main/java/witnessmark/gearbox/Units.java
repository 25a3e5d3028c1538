package witnessmark.gearbox;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The units a shop reads, one for each quantity of which two are in use; none chosen means that figures are said in their
 * own unit and in the one that a US reader expects.
 *
 * @param read the units chosen, at most one of each kind
 */
public record Units(List<Unit> read) {
    private static final int LONGEST_PLAIN = 20;

    public static final Units BOTH = new Units(List.of());

    /** Units that say the same in the workshop; the speed goes with the distance. */
    private static final List<List<Unit>> KINDS = List.of(
            List.of(Unit.BAR, Unit.PSI, Unit.KILOPASCAL),
            List.of(Unit.MEGAPASCAL, Unit.PSI),
            List.of(Unit.KILOMETRE, Unit.MILE),
            List.of(Unit.KILOMETRE_PER_HOUR, Unit.MILE_PER_HOUR),
            List.of(Unit.KILOMETRE_PER_HOUR_PER_SECOND, Unit.MILE_PER_HOUR_PER_SECOND),
            List.of(Unit.METRE_PER_SECOND, Unit.FOOT_PER_SECOND),
            List.of(Unit.MILLIMETRE, Unit.INCH),
            List.of(Unit.CELSIUS, Unit.FAHRENHEIT),
            List.of(Unit.CELSIUS_CHANGE, Unit.FAHRENHEIT_CHANGE),
            List.of(Unit.NEWTON_METRE, Unit.POUND_FOOT),
            List.of(Unit.NEWTON, Unit.POUND_FORCE),
            List.of(Unit.KILOGRAM, Unit.POUND),
            List.of(Unit.LITRE, Unit.US_GALLON, Unit.US_QUART),
            List.of(Unit.KILOJOULE, Unit.BRITISH_THERMAL_UNIT),
            List.of(Unit.REVOLUTION_PER_KILOMETRE, Unit.REVOLUTION_PER_MILE));

    private static final Map<Unit, List<Unit>> WITH = Map.of(
            Unit.BAR, List.of(Unit.MEGAPASCAL),
            Unit.KILOPASCAL, List.of(Unit.MEGAPASCAL),
            Unit.KILOMETRE,
                    List.of(
                            Unit.KILOMETRE_PER_HOUR,
                            Unit.KILOMETRE_PER_HOUR_PER_SECOND,
                            Unit.METRE_PER_SECOND,
                            Unit.REVOLUTION_PER_KILOMETRE),
            Unit.MILE,
                    List.of(
                            Unit.MILE_PER_HOUR,
                            Unit.MILE_PER_HOUR_PER_SECOND,
                            Unit.FOOT_PER_SECOND,
                            Unit.REVOLUTION_PER_MILE),
            Unit.CELSIUS, List.of(Unit.CELSIUS_CHANGE),
            Unit.FAHRENHEIT, List.of(Unit.FAHRENHEIT_CHANGE),
            Unit.NEWTON_METRE, List.of(Unit.NEWTON),
            Unit.POUND_FOOT, List.of(Unit.POUND_FORCE));

    private static final List<Unit> METRIC = List.of(
            Unit.BAR,
            Unit.KILOMETRE,
            Unit.MILLIMETRE,
            Unit.CELSIUS,
            Unit.NEWTON_METRE,
            Unit.KILOGRAM,
            Unit.LITRE,
            Unit.KILOJOULE);
    private static final List<Unit> US = List.of(
            Unit.PSI,
            Unit.MILE,
            Unit.INCH,
            Unit.FAHRENHEIT,
            Unit.POUND_FOOT,
            Unit.POUND,
            Unit.US_QUART,
            Unit.BRITISH_THERMAL_UNIT);

    public Units {
        read = List.copyOf(read);
    }

    /**
     * The units that words name: {@code both}, {@code metric}, {@code us}, and single units, of which a later one stands
     * for an earlier one of its kind, as in {@code metric psi}. Empty if a word is none of these.
     */
    public static Optional<Units> parse(String words) {
        List<Unit> chosen = new ArrayList<>();
        for (String word : words.strip().toLowerCase(Locale.ROOT).split("[\\s,;]+")) {
            List<Unit> named =
                    switch (word) {
                        case "both" -> List.of();
                        case "metric" -> METRIC;
                        case "us" -> US;
                        default -> Unit.parse(word)
                                .filter(u -> METRIC.contains(u) || US.contains(u) || isNamedAlone(u))
                                .map(List::of)
                                .orElse(List.of());
                    };
            if (named.isEmpty() && !word.equals("both")) {
                return Optional.empty();
            }
            named.forEach(unit -> choose(unit, chosen));
        }
        return Optional.of(new Units(chosen));
    }

    private static boolean isNamedAlone(Unit unit) {
        return unit == Unit.KILOPASCAL || unit == Unit.US_GALLON;
    }

    private static void choose(Unit unit, List<Unit> chosen) {
        put(unit, chosen);
        WITH.getOrDefault(unit, List.of()).forEach(with -> put(with, chosen));
    }

    private static void put(Unit unit, List<Unit> chosen) {
        KINDS.stream().filter(kind -> kind.contains(unit)).forEach(chosen::removeAll);
        chosen.add(unit);
    }

    /** All words that choose single units, for messages. */
    public static String words() {
        return Arrays.stream(Unit.values())
                .filter(u -> METRIC.contains(u) || US.contains(u) || isNamedAlone(u))
                .map(Unit::symbol)
                .collect(Collectors.joining(", "));
    }

    /** The unit in which a figure of {@code unit} is read here; the same one where nothing was chosen for it. */
    public Unit shown(Unit unit) {
        return KINDS.stream()
                .filter(kind -> kind.contains(unit))
                .flatMap(kind -> read.stream().filter(kind::contains))
                .findFirst()
                .orElse(unit);
    }

    /** Whether something was chosen for figures of {@code unit}. */
    boolean isChosenFor(Unit unit) {
        return KINDS.stream()
                .anyMatch(kind -> kind.contains(unit) && read.stream().anyMatch(kind::contains));
    }

    /** A number as somebody gave it, in the unit read here, and behind it as it was given where that is another one. */
    public String given(double value, Unit unit) {
        String written = written(value) + " " + unit.symbol();
        return shown(unit) == unit ? written : read(value, unit) + " (" + written + ")";
    }

    /** A number that somebody gave, in the unit read here and rounded for it. */
    public String read(double value, Unit unit) {
        return shown(unit) == unit
                ? written(value) + " " + unit.symbol()
                : Figure.given(value, unit).in(shown(unit)).plain();
    }

    private static String written(double value) {
        BigDecimal number = BigDecimal.valueOf(value).stripTrailingZeros();
        return Math.abs(number.scale()) <= LONGEST_PLAIN ? number.toPlainString() : number.toString();
    }
}
