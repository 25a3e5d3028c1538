package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A summary as lines for the terminal and as CSV rows. */
public final class SummaryTable {
    private static final double LEAST_HOURS = 1 / 3600.0;

    private SummaryTable() {}

    /** Distance, hours, gears, events and verdicts, in plain text. */
    public static List<String> lines(TripSummary s) {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(Locale.ROOT, "Distance        %.1f km (%.1f mi)", s.km(), s.km() / 1.609344));
        s.odometerKm().ifPresent(km -> lines.add(String.format(Locale.ROOT, "By odometer     %.1f km", km)));
        lines.add(String.format(
                Locale.ROOT,
                "Hours           %.2f covered, %.2f moving, %.2f engine running",
                s.coveredHours(),
                s.movingHours(),
                s.engineHours()));
        lines.add(String.format(Locale.ROOT, "Highest         %.0f km/h, %.0f rpm", s.highestKmh(), s.highestRpm()));
        lines.add(String.format(
                Locale.ROOT,
                "Shifts          %d, of them %d with the lever, %d through the range",
                s.shifts(),
                s.leverShifts(),
                s.rangeShifts()));
        lines.add(String.format(Locale.ROOT, "A gear fits in  %.0f %% of the driving time", 100 * s.gearKnownShare()));
        lines.add("Time in hand");
        s.hoursInHand().forEach((name, hours) -> {
            if (hours >= LEAST_HOURS) {
                lines.add(String.format(
                        Locale.ROOT, "  %-12s %7.2f h %5.1f %%", name, hours, 100 * hours / s.coveredHours()));
            }
        });
        lines.add("What the log says");
        s.verdicts().forEach(v -> lines.add("  " + verdict(s, v)));
        return lines;
    }

    private static String verdict(TripSummary s, Verdict v) {
        String head = String.format(
                Locale.ROOT, "%-52s %s", v.kind().words(), v.state().words());
        CountInterval rate = s.per100km().get(v.kind());
        return switch (v.state()) {
            case SEEN -> head + ": " + v.reason()
                    + (rate == null
                            ? ""
                            : String.format(
                                    Locale.ROOT,
                                    ", %.2g per 100 km (95 %% %.2g to %.2g)",
                                    rate.rate(),
                                    rate.lower(),
                                    rate.upper()));
            case NOT_SEEN_THOUGH_POSSIBLE -> head + " " + v.reason();
            case CANNOT_BE_SEEN -> head + ": " + v.reason();
        };
    }

    /** A header and one row for each kind of event. */
    public static List<String> csv(TripSummary s) {
        List<String> lines = new ArrayList<>();
        lines.add("kind,state,count,chances,per_100_km,lower_95,upper_95,reason");
        for (Verdict v : s.verdicts()) {
            CountInterval rate = s.per100km().get(v.kind());
            boolean possible = v.state() != Verdict.State.CANNOT_BE_SEEN && s.km() > 0;
            CountInterval interval = rate != null ? rate : possible ? CountInterval.of(0, s.km() / 100) : null;
            lines.add(CsvText.line(List.of(
                    v.kind().id(),
                    v.state().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                    v.count(),
                    v.chances(),
                    interval == null ? "" : interval.rate(),
                    interval == null ? "" : interval.lower(),
                    interval == null ? "" : interval.upper(),
                    v.reason())));
        }
        return lines;
    }

    /** A header and one row for each gear, and for what else was in hand. */
    public static List<String> gearCsv(TripSummary s) {
        List<String> lines = new ArrayList<>();
        lines.add("in_hand,hours");
        for (Map.Entry<String, Double> entry : s.hoursInHand().entrySet()) {
            lines.add(CsvText.line(List.of(entry.getKey(), entry.getValue())));
        }
        return lines;
    }

    /** Kinds that this log cannot show, each with its reason. */
    public static List<String> blindSpots(TripSummary s) {
        return s.verdicts().stream()
                .filter(v -> v.state() == Verdict.State.CANNOT_BE_SEEN)
                .map(v -> v.kind().words() + ": " + v.reason())
                .toList();
    }
}
