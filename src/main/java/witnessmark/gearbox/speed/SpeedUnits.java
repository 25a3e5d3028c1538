package witnessmark.gearbox.speed;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;

/** In which units road speeds are shown. */
public enum SpeedUnits {
    METRIC("km/h"),
    US("mph"),
    BOTH("km/h (mph)");

    private final String heading;

    SpeedUnits(String heading) {
        this.heading = heading;
    }

    /** The units so named, metric, us or both; empty if they are none. */
    public static Optional<SpeedUnits> parse(String word) {
        return Arrays.stream(values())
                .filter(units -> units.name().toLowerCase(Locale.ROOT).equals(word))
                .findFirst();
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
        double kmh = speed.in(Unit.KILOMETRE_PER_HOUR).value();
        double mph = speed.in(Unit.MILE_PER_HOUR).value();
        return switch (this) {
            case METRIC -> String.format(Locale.ROOT, "%.1f", kmh);
            case US -> String.format(Locale.ROOT, "%.1f", mph);
            case BOTH -> String.format(Locale.ROOT, "%.1f (%.1f)", kmh, mph);
        };
    }

    /** A speed not to be passed, whole and rounded down, with its unit. */
    public String limit(Figure speed) {
        long kmh = (long) Math.floor(speed.in(Unit.KILOMETRE_PER_HOUR).value() + 1e-9);
        long mph = (long) Math.floor(speed.in(Unit.MILE_PER_HOUR).value() + 1e-9);
        return switch (this) {
            case METRIC -> kmh + " km/h";
            case US -> mph + " mph";
            case BOTH -> kmh + " km/h (" + mph + " mph)";
        };
    }

    /** A speed to aim for, whole, with its unit. */
    public String whole(Figure speed) {
        long kmh = Math.round(speed.in(Unit.KILOMETRE_PER_HOUR).value());
        long mph = Math.round(speed.in(Unit.MILE_PER_HOUR).value());
        return switch (this) {
            case METRIC -> kmh + " km/h";
            case US -> mph + " mph";
            case BOTH -> kmh + " km/h (" + mph + " mph)";
        };
    }
}
