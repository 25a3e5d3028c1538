package witnessmark.shell.print;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import witnessmark.document.OddsFactor;
import witnessmark.language.Percent;
import witnessmark.language.Texts;

/** How figures are said in plain text. */
public final class ScreenFigures {
    private ScreenFigures() {}

    public static String percent(double probability) {
        return Percent.text(probability);
    }

    /** A bar of ten places for a probability. */
    public static String bar(double probability) {
        int filled = (int) Math.round(10 * probability);
        return "[" + "#".repeat(filled) + ".".repeat(10 - filled) + "]";
    }

    /** A rate in two digits; a count of events carries no more: 0.31, 4.2, 57, 110. */
    public static String figure(double value) {
        if (value == 0) {
            return "0";
        }
        return value >= 10
                ? BigDecimal.valueOf(value).round(new MathContext(2)).toPlainString()
                : String.format(Locale.ROOT, "%.2g", value);
    }

    /** Hours as h:mm:ss. */
    public static String clock(double hours) {
        long seconds = Math.round(hours * 3600);
        return String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
    }

    /** A number without needless decimals: 82, 596.1, 0.05. */
    public static String plain(double value) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** How far something moves the odds: ×16 or ÷4.2. */
    public static String odds(double decibans) {
        return OddsFactor.text(decibans);
    }

    public static String times(double multiple) {
        return String.format(
                Locale.ROOT, multiple < 0.1 ? "%.2f times" : multiple < 100 ? "%.1f times" : "%.0f times", multiple);
    }

    public static String minutes(double minutes) {
        if (minutes < 1) {
            return "<1 min";
        }
        return minutes < 90
                ? Math.round(minutes) + " min"
                : String.format(Locale.ROOT, "%.1f h", minutes / 60).replace(".0 h", " h");
    }

    /** The first of them and how many more there are, in the language of the wording. */
    public static String some(List<String> texts, int most, Texts wording) {
        String shown = String.join("; ", texts.subList(0, Math.min(most, texts.size())));
        return texts.size() > most ? shown + "; " + wording.text("and-more", texts.size() - most) : shown;
    }

    public static String some(List<String> texts, int most) {
        String shown = String.join("; ", texts.subList(0, Math.min(most, texts.size())));
        return texts.size() > most ? shown + "; and " + (texts.size() - most) + " more" : shown;
    }
}
