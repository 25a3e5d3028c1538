package witnessmark.gearbox;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * A number with its unit, where it comes from, and a note: for an assumed figure how sure it is, for a computed one
 * the formula, for a given one usually nothing.
 *
 * @param value always finite; anything else throws {@link IllegalArgumentException}
 */
public record Figure(double value, Unit unit, Basis basis, String note) {

    private static final double SMALLEST_SHOWN = 0.0001;
    private static final String SHOWN = "0.0001";
    private static final int BEFORE_NOISE = 13;

    public Figure {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("figure: " + value + " is not a finite number of " + unit.symbol());
        }
    }

    public static Figure given(double value, Unit unit) {
        return new Figure(value, unit, Basis.GIVEN, "");
    }

    public static Figure assumed(double value, Unit unit, String howSure) {
        return new Figure(value, unit, Basis.ASSUMED, howSure);
    }

    public static Figure computed(double value, Unit unit, String formula) {
        return new Figure(value, unit, Basis.COMPUTED, formula);
    }

    /** The same figure in another unit of its quantity; throws where the quantity differs. */
    public Figure in(Unit target) {
        return new Figure(unit.convert(value, target), target, basis, note);
    }

    /** The number and unit, and in brackets the unit that a US reader expects, where that is another one. */
    public String text() {
        return customary().map(us -> plain() + " (" + us.plain() + ")").orElse(plain());
    }

    /** The same in the units that a shop reads: in the unit chosen alone, or as {@link #text()} where none was. */
    public String text(Units units) {
        return units.isChosenFor(unit) ? in(units.shown(unit)).plain() : text();
    }

    /** The number and its own unit; a bare number for a ratio. */
    String plain() {
        return unit == Unit.RATIO ? number() : number() + " " + unit.symbol();
    }

    /** The same in the unit that a US reader expects; empty where that is the same one. */
    public Optional<Figure> customary() {
        return customaryUnit().map(this::in);
    }

    private Optional<Unit> customaryUnit() {
        return switch (unit) {
            case KILOMETRE_PER_HOUR -> Optional.of(Unit.MILE_PER_HOUR);
            case KILOMETRE_PER_HOUR_PER_SECOND -> Optional.of(Unit.MILE_PER_HOUR_PER_SECOND);
            case METRE_PER_SECOND -> Optional.of(Unit.FOOT_PER_SECOND);
            case NEWTON_METRE -> Optional.of(Unit.POUND_FOOT);
            case NEWTON -> Optional.of(Unit.POUND_FORCE);
            case KILOGRAM -> Optional.of(Unit.POUND);
            case MILLIMETRE -> Optional.of(Unit.INCH);
            case KILOMETRE -> Optional.of(Unit.MILE);
            case MEGAPASCAL -> Optional.of(Unit.PSI);
            case KILOJOULE -> Optional.of(Unit.BRITISH_THERMAL_UNIT);
            case CELSIUS_CHANGE -> Optional.of(Unit.FAHRENHEIT_CHANGE);
            case REVOLUTION_PER_KILOMETRE -> Optional.of(Unit.REVOLUTION_PER_MILE);
            default -> Optional.empty();
        };
    }

    /**
     * The number without its unit. Rounded once, here: engine speeds whole, what rests on inertias, friction, grip or a
     * bore to three digits, which is more than is known of them, the rest to four.
     */
    public String number() {
        if (value != 0 && Math.abs(value) < SMALLEST_SHOWN) {
            return value > 0 ? "below " + SHOWN : "above -" + SHOWN;
        }
        BigDecimal exact = decimal();
        BigDecimal rounded = unit == Unit.RPM
                ? exact.setScale(0, RoundingMode.HALF_UP)
                : exact.round(new MathContext(digits(), RoundingMode.HALF_UP));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** The value without the noise of its last binary digits, so that what is a half by hand is rounded as one. */
    public BigDecimal decimal() {
        return BigDecimal.valueOf(value).round(new MathContext(BEFORE_NOISE));
    }

    private int digits() {
        return switch (basis) {
            case COMPUTED -> computedDigits();
            case ASSUMED -> 4;
                // What somebody wrote is shown as it was written: a mass of 80,000 lb, 36,287 kg.
            case GIVEN -> Math.abs(value) >= 10_000 ? 5 + (int) Math.log10(Math.abs(value) / 10_000) : 4;
        };
    }

    /** Ratios, tyre and angles are known as they were given; of torques a difference is taken, which eats digits. */
    private int computedDigits() {
        return switch (unit.quantity()) {
            case RATIO, ANGLE, MASS, TURNS_PER_LENGTH, TORQUE -> 4;
            case SPEED -> unit == Unit.KILOMETRE_PER_HOUR || unit == Unit.MILE_PER_HOUR ? 4 : 3;
            default -> 3;
        };
    }
}
