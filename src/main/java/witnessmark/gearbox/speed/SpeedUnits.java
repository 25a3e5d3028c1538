package witnessmark.gearbox.speed;

import java.math.RoundingMode;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;

/** In which units road speeds are shown. */
public enum SpeedUnits {
    METRIC("km/h"),
    US("mph"),
    BOTH("km/h (mph)");

    private static final double CRAWL = 2;

    private final String heading;

    SpeedUnits(String heading) {
        this.heading = heading;
    }

    /** The units of a shop that reads these. */
    public static SpeedUnits of(Units units) {
        return switch (units.shown(Unit.KILOMETRE_PER_HOUR)) {
            case MILE_PER_HOUR -> US;
            default -> units.read().contains(Unit.KILOMETRE_PER_HOUR) ? METRIC : BOTH;
        };
    }

    public String heading() {
        return heading;
    }

    /** A road speed to one decimal, without its unit. */
    public String cell(Figure speed) {
        String kmh = tenths(speed.in(Unit.KILOMETRE_PER_HOUR));
        String mph = tenths(speed.in(Unit.MILE_PER_HOUR));
        return switch (this) {
            case METRIC -> kmh;
            case US -> mph;
            case BOTH -> kmh + " (" + mph + ")";
        };
    }

    private static String tenths(Figure speed) {
        return speed.decimal().setScale(1, RoundingMode.HALF_UP).toPlainString();
    }

    /** A speed not to be passed, rounded down, with its unit: whole, or to a tenth in a crawler. */
    public String limit(Figure speed) {
        return both(speed, RoundingMode.DOWN);
    }

    /** A speed to aim for, with its unit: whole, or to a tenth in a crawler. */
    public String whole(Figure speed) {
        return both(speed, RoundingMode.HALF_UP);
    }

    private String both(Figure speed, RoundingMode rounding) {
        String kmh = rounded(speed.in(Unit.KILOMETRE_PER_HOUR), rounding);
        String mph = rounded(speed.in(Unit.MILE_PER_HOUR), rounding);
        return switch (this) {
            case METRIC -> kmh;
            case US -> mph;
            case BOTH -> kmh + " (" + mph + ")";
        };
    }

    /** Below {@link #CRAWL} a whole number would say nothing, or 0. */
    private static String rounded(Figure speed, RoundingMode rounding) {
        return speed.decimal().setScale(speed.value() < CRAWL ? 1 : 0, rounding).toPlainString() + " "
                + speed.unit().symbol();
    }
}
