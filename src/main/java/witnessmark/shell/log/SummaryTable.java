package witnessmark.shell.log;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import witnessmark.shell.print.CsvTable;
import witnessmark.triplog.summary.CountInterval;
import witnessmark.triplog.summary.LogVerdict;
import witnessmark.triplog.summary.TripSummary;

/** Summaries as CSV rows. */
public final class SummaryTable {
    private SummaryTable() {}

    /** The names of the columns of {@link #rows}. */
    public static String header() {
        return "truck,partial,kind,state,count,chances,chance_of,per_100_km,lower_95,upper_95,reason";
    }

    /**
     * One row for each kind of event; chances of distance count 100 km, rates have their exact 95 % interval.
     *
     * @param partial whether the reading was stopped before the end
     */
    public static List<String> rows(String truck, boolean partial, TripSummary summary) {
        return summary.verdicts().stream()
                .map(v -> row(truck, partial, summary, v))
                .toList();
    }

    private static String row(String truck, boolean partial, TripSummary s, LogVerdict v) {
        CountInterval rate = s.per100km().get(v.kind());
        boolean possible = v.state() == LogVerdict.State.NOT_SEEN_THOUGH_POSSIBLE && s.km() > 0;
        CountInterval interval = rate == null && possible ? CountInterval.of(0, s.km() / 100) : rate;
        return CsvTable.line(List.of(
                truck,
                partial ? "yes" : "no",
                v.kind().id(),
                word(v.state()),
                v.count(),
                rounded(v.chances()),
                word(v.kind().chance()),
                interval == null ? "" : rounded(interval.rate()),
                interval == null ? "" : rounded(interval.lower()),
                interval == null ? "" : rounded(interval.upper()),
                v.reason()));
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static BigDecimal rounded(double value) {
        BigDecimal plain = BigDecimal.valueOf(value).round(new MathContext(5)).stripTrailingZeros();
        return plain.scale() < 0 ? plain.setScale(0) : plain;
    }
}
