package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Summaries as CSV rows. */
public final class SummaryTable {
    private SummaryTable() {}

    /** A header and, for each truck, one row for each kind of event; rates per 100 km with the exact 95 % interval. */
    public static List<String> csv(Map<String, TripSummary> trucks) {
        List<String> lines = new ArrayList<>();
        lines.add("truck,kind,state,count,chances,per_100_km,lower_95,upper_95,reason");
        trucks.forEach((truck, summary) -> summary.verdicts().forEach(v -> lines.add(row(truck, summary, v))));
        return lines;
    }

    private static String row(String truck, TripSummary s, Verdict v) {
        CountInterval rate = s.per100km().get(v.kind());
        boolean possible = v.state() == Verdict.State.NOT_SEEN_THOUGH_POSSIBLE && s.km() > 0;
        CountInterval interval = rate == null && possible ? CountInterval.of(0, s.km() / 100) : rate;
        return CsvText.line(List.of(
                truck,
                v.kind().id(),
                v.state().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                v.count(),
                v.chances(),
                interval == null ? "" : interval.rate(),
                interval == null ? "" : interval.lower(),
                interval == null ? "" : interval.upper(),
                v.reason()));
    }
}
