package witnessmark.casefile;

import java.util.Arrays;
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
 * @param note the technician's own words, empty for none
 */
public record Measurement(String measure, double value, Unit unit, Optional<Limits> limits, String note) {
    private static final double ABSOLUTE_ZERO_CELSIUS = -273.15;

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
    }

    public Measurement(String measure, double value, Unit unit) {
        this(measure, value, unit, Optional.empty(), "");
    }

    private static String unitsOf(Quantity quantity) {
        return Arrays.stream(Unit.values())
                .filter(u -> u.quantity() == quantity)
                .map(Unit::symbol)
                .collect(Collectors.joining(", "));
    }
}
