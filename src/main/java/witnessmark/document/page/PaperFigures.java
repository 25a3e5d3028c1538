package witnessmark.document.page;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import witnessmark.casefile.PlainNumber;

/** How figures and times are said on paper. */
final class PaperFigures {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss 'UTC'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    /** Decibans below which a finding is silent on a class. */
    private static final double SILENT = 0.5;

    private PaperFigures() {}

    static String percent(double probability) {
        double percent = 100 * probability;
        if (percent < 1) {
            return "under 1 %";
        }
        return percent > 99 ? "over 99 %" : Math.round(percent) + " %";
    }

    /** A chance in words, no surer than the figure. */
    static String chance(double probability) {
        if (probability >= 0.9) {
            return "very likely on this evidence";
        }
        if (probability >= 0.7) {
            return "likely on this evidence";
        }
        if (probability >= 0.5) {
            return "more likely than not";
        }
        return probability >= 0.1 ? "possible" : "unlikely on this evidence";
    }

    static String decibans(double decibans) {
        return String.format(Locale.ROOT, "%+.1f", decibans);
    }

    /** A weight with its direction in a word, so that no sign or colour is needed to read it. */
    static String weight(double decibans) {
        if (Math.abs(decibans) < SILENT) {
            return "silent";
        }
        return (decibans > 0 ? "for " : "against ") + decibans(decibans);
    }

    /** How strongly a finding speaks, in words. */
    static String strength(double decibans) {
        double size = Math.abs(decibans);
        if (size >= 10) {
            return "strongly";
        }
        return size >= 4 ? "clearly" : "a little";
    }

    static String minutes(double minutes) {
        return minutes < 90
                ? Math.max(1, Math.round(minutes)) + " min"
                : String.format(Locale.ROOT, "%.1f h", minutes / 60).replace(".0 h", " h");
    }

    static String number(double value) {
        return PlainNumber.of(value);
    }

    static String time(Instant time) {
        return TIME.format(time);
    }

    static String list(List<String> texts) {
        return String.join("; ", texts);
    }

    static String words(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
