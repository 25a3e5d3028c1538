package witnessmark.gearbox;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A radial truck tyre's size as marked on its side wall: {@code 295/80R22.5}, or without the aspect ratio
 * {@code 11R22.5}.
 *
 * @param code the size as it was written
 * @param outerDiameterMm rim plus twice the section height
 * @param aspectAssumed whether the size does not say how high the section is
 */
public record TyreSize(String code, double outerDiameterMm, boolean aspectAssumed) {

    /** Rolling circumference of a radial over its outer diameter; European tyre standards, from memory. */
    static final double ROLLING_FACTOR = 3.05;
    /** Section height over width where the size does not say; about right for 9 to 12 inch sizes, from memory. */
    static final double USUAL_ASPECT = 0.86;

    private static final Pattern METRIC =
            Pattern.compile("(\\d{3})\\s*/\\s*(\\d{2,3})\\s*R\\s*(\\d{2}(?:\\.\\d)?)" + "(?:\\s+\\d{2,3}.*)?");
    private static final Pattern INCH =
            Pattern.compile("(\\d{1,2}(?:\\.\\d{1,2})?)\\s*R\\s*(\\d{2}(?:\\.\\d)?)(?:\\s+\\d{2,3}.*)?");

    /** Reads a size; empty where it is not one. A load index and speed letter after it are passed over. */
    public static Optional<TyreSize> parse(String code) {
        String plain = code.strip().toUpperCase(Locale.ROOT);
        Matcher metric = METRIC.matcher(plain);
        if (metric.matches()) {
            double width = Double.parseDouble(metric.group(1));
            double aspect = Double.parseDouble(metric.group(2)) / 100;
            return Optional.of(of(code, width, aspect, metric.group(3), false));
        }
        Matcher inch = INCH.matcher(plain);
        return inch.matches()
                ? Optional.of(of(code, Double.parseDouble(inch.group(1)) * 25.4, USUAL_ASPECT, inch.group(2), true))
                : Optional.empty();
    }

    private static TyreSize of(String code, double widthMm, double aspect, String rimInch, boolean assumed) {
        return new TyreSize(code.strip(), Double.parseDouble(rimInch) * 25.4 + 2 * widthMm * aspect, assumed);
    }

    /** Turns of the wheel in one kilometre. */
    public Figure revsPerKm() {
        String howSure = aspectAssumed
                ? "; the size does not say the section height, taken as 0.86 of the width: sure to about 3 %"
                : ": sure to about 2 %";
        return new Figure(
                1e6 / (ROLLING_FACTOR * outerDiameterMm),
                Unit.REVOLUTION_PER_KILOMETRE,
                Basis.ASSUMED,
                "from size " + code + ", rolling circumference taken as 3.05 times the outer diameter" + howSure);
    }
}
