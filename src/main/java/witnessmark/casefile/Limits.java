package witnessmark.casefile;

import java.util.OptionalDouble;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Unit.Quantity;

/**
 * Between which values a measurement is good, and who says so.
 *
 * @param low lowest good value in {@code unit}, empty for none
 * @param high highest good value in {@code unit}, empty for none
 * @param source whose limit it is, such as the service manual of the unit; never empty
 */
public record Limits(OptionalDouble low, OptionalDouble high, Unit unit, String source) {
    public Limits {
        if (low.isEmpty() && high.isEmpty()) {
            throw new CaseRefused("limit: neither low nor high is given", "give at least one of them");
        }
        low = checked("low", low, unit);
        high = checked("high", high, unit);
        if (low.isPresent() && high.isPresent() && low.getAsDouble() > high.getAsDouble()) {
            throw new CaseRefused(
                    "limit: low " + PlainNumber.of(low.getAsDouble()) + " is above high "
                            + PlainNumber.of(high.getAsDouble()),
                    "exchange or correct them");
        }
        source = CheckedText.line("limit-from", source);
        if (source.isEmpty()) {
            throw new CaseRefused(
                    "limit: it is not said whose limit it is",
                    "add limit-from, such as limit-from: \"service manual of this unit\"");
        }
    }

    /** The same limits in another unit of the same quantity. */
    public Limits in(Unit other) {
        return new Limits(converted(low, other), converted(high, other), other, source);
    }

    private OptionalDouble converted(OptionalDouble side, Unit other) {
        return side.isEmpty() ? side : OptionalDouble.of(unit.convert(side.getAsDouble(), other));
    }

    private static OptionalDouble checked(String side, OptionalDouble given, Unit unit) {
        if (given.isEmpty()) {
            return given;
        }
        double value = PlainNumber.checked(side, given.getAsDouble());
        boolean canBeNegative = unit.quantity() == Quantity.TEMPERATURE || unit.quantity() == Quantity.ANGLE;
        if (value < 0 && !canBeNegative) {
            throw new CaseRefused(
                    side + ": a limit of " + PlainNumber.of(value) + " " + unit.symbol() + " is below zero",
                    "give a limit of zero or more");
        }
        return OptionalDouble.of(value);
    }
}
