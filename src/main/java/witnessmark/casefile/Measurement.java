package witnessmark.casefile;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Unit.Quantity;

/**
 * One value measured, with the limits it is held against.
 *
 * @param measure id of the measure in the knowledge base
 * @param value what was read, in {@code unit}
 * @param limits in any unit that converts to {@code unit}; empty where no limit is known, so nothing follows from it
 * @param earlier what it was on the same unit before, oldest first; empty where nobody knows
 * @param note the technician's own words, empty for none
 */
public record Measurement(
        String measure, double value, Unit unit, Optional<Limits> limits, List<EarlierSample> earlier, String note) {
    private static final double ABSOLUTE_ZERO_CELSIUS = -273.15;
    private static final int MOST_EARLIER = 50;

    public Measurement {
        measure = CheckedText.id("measurement", measure);
        note = CheckedText.free("measurement '" + measure + "', note", note);
        value = PlainNumber.checked("value", value);
        if (unit.quantity() == Quantity.TEMPERATURE && unit.convert(value, Unit.CELSIUS) < ABSOLUTE_ZERO_CELSIUS) {
            throw new CaseRefused(
                    "value: " + PlainNumber.of(value) + " " + unit.symbol() + " is below absolute zero",
                    "correct the value or its unit");
        }
        if (limits.isPresent() && limits.get().unit().quantity() != unit.quantity()) {
            throw new CaseRefused(
                    "limit-unit: " + limits.get().unit().symbol() + " does not convert to " + unit.symbol(),
                    "use one of " + unitsOf(unit.quantity()));
        }
        earlier = earlier.stream()
                .sorted(Comparator.comparing(EarlierSample::day))
                .toList();
        checkDays(earlier);
    }

    public Measurement(String measure, double value, Unit unit, Optional<Limits> limits, String note) {
        this(measure, value, unit, limits, List.of(), note);
    }

    public Measurement(String measure, double value, Unit unit) {
        this(measure, value, unit, Optional.empty(), "");
    }

    private static void checkDays(List<EarlierSample> earlier) {
        if (earlier.size() > MOST_EARLIER) {
            throw new CaseRefused(
                    "earlier: " + earlier.size() + " samples are more than the " + MOST_EARLIER + " that are kept",
                    "leave out the oldest");
        }
        for (int i = 1; i < earlier.size(); i++) {
            if (earlier.get(i).day().equals(earlier.get(i - 1).day())) {
                throw new CaseRefused(
                        "earlier: two samples of " + earlier.get(i).day(), "keep one for each day");
            }
        }
    }

    private static String unitsOf(Quantity quantity) {
        return Arrays.stream(Unit.values())
                .filter(u -> u.quantity() == quantity)
                .map(Unit::symbol)
                .collect(Collectors.joining(", "));
    }
}
