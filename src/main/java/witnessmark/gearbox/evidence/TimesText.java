package witnessmark.gearbox.evidence;

import java.util.Locale;
import witnessmark.gearbox.Figure;

/** A figure put into a sentence. */
final class TimesText {

    private TimesText() {}

    static String times(Figure figure) {
        double value = figure.value();
        String digits = value < 0.1 ? "%.2f times" : value < 100 ? "%.1f times" : "%.0f times";
        return String.format(Locale.ROOT, digits, value);
    }
}
