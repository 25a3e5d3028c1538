package witnessmark.shell.log;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.EnumWord;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.triplog.TruckResult;
import witnessmark.triplog.summary.ComparePeriods;
import witnessmark.triplog.summary.ComparePeriods.Change;
import witnessmark.triplog.summary.TwoRates;

/** Two periods of one truck beside each other. */
record LogChange(TruckResult before, TruckResult after, List<Change> changes) {

    void print(Page page, String profile) {
        page.line("Read with the numbers of " + profile);
        page.line("  before: " + period(before));
        page.line("  after:  " + period(after));
        page.heading("Events");
        List<Change> some = changes.stream().filter(c -> happened(c)).toList();
        some.forEach(c -> change(page, c));
        if (some.isEmpty()) {
            page.line("  None in either period, of the kinds that both could show.");
        }
        list(
                page,
                "Could be seen in both periods, and in neither was",
                changes.stream()
                        .filter(c -> c.rates().isPresent() && !happened(c))
                        .toList());
        List<Change> blind = changes.stream().filter(c -> c.rates().isEmpty()).toList();
        if (!blind.isEmpty()) {
            page.heading("Not compared");
            Map<String, List<Change>> byReason = blind.stream()
                    .collect(Collectors.groupingBy(Change::obstacle, LinkedHashMap::new, Collectors.toList()));
            byReason.forEach((reason, kinds) -> page.item(reason + ": " + words(kinds)));
        }
        page.blank();
        page.line("How to read it: exact conditional test of two Poisson rates, p two-sided (twice the smaller tail),"
                + " ratio after over before with its exact 95 % interval. " + ComparePeriods.CAUTION);
        page.line("A change of load, route or driver looks the same as a change of habit.");
        page.flush();
    }

    private static boolean happened(Change change) {
        return change.rates().map(r -> r.countBefore() + r.countAfter() > 0).orElse(false);
    }

    private static String period(TruckResult logs) {
        return String.format(
                Locale.ROOT,
                "%d %s, %.1f km, %s",
                logs.trips().size(),
                logs.trips().size() == 1 ? "log" : "logs",
                logs.summary().km(),
                ScreenFigures.clock(logs.summary().coveredHours()));
    }

    private static void change(Page page, Change change) {
        TwoRates r = change.rates().orElseThrow();
        page.item(change.kind().words() + ": " + change.outcome().words());
        page.indented(
                "    ",
                "    ",
                "before " + r.countBefore() + " in "
                        + change.kind().chance().words(r.exposureBefore()) + ", after " + r.countAfter() + " in "
                        + change.kind().chance().words(r.exposureAfter()));
        page.indented(
                "    ",
                "    ",
                "ratio " + ScreenFigures.figure(r.ratio()) + " (95 %: " + ScreenFigures.figure(r.lower()) + " to "
                        + (Double.isInfinite(r.upper()) ? "any" : ScreenFigures.figure(r.upper())) + "), p = "
                        + (r.pTwoSided() < 0.0001 ? "below 0.0001" : ScreenFigures.figure(r.pTwoSided())));
    }

    private static void list(Page page, String title, List<Change> kinds) {
        if (!kinds.isEmpty()) {
            page.heading(title);
            page.indented("  ", "  ", words(kinds));
        }
    }

    private static String words(List<Change> kinds) {
        return kinds.stream().map(c -> c.kind().words()).collect(Collectors.joining("; "));
    }

    /** The same for a program. */
    record Form(LogJson.Summary before, LogJson.Summary after, List<OfKind> kinds, String caution) {}

    /** Of one kind: what hinders a comparison, or both counts with what they could have been of, and their ratio. */
    record OfKind(
            String kind,
            String chanceOf,
            ComparePeriods.Outcome outcome,
            Optional<String> obstacle,
            @Json.Inlined Optional<Rates> rates) {}

    record Rates(
            long countBefore,
            double chancesBefore,
            long countAfter,
            double chancesAfter,
            @Json.Inlined Optional<Ratio> ratio,
            double pTwoSided) {}

    /** JSON knows no infinity: a ratio over none before is told as a word. */
    record Ratio(Object ratio, double lower95, Object upper95) {}

    Form form() {
        return new Form(
                LogJson.Summary.of(before.summary()),
                LogJson.Summary.of(after.summary()),
                changes.stream().map(LogChange::form).toList(),
                ComparePeriods.CAUTION);
    }

    private static OfKind form(Change change) {
        return new OfKind(
                change.kind().id(),
                EnumWord.of(change.kind().chance()),
                change.outcome(),
                change.rates().isEmpty() ? Optional.of(change.obstacle()) : Optional.empty(),
                change.rates().map(LogChange::form));
    }

    private static Rates form(TwoRates r) {
        return new Rates(
                r.countBefore(),
                r.exposureBefore(),
                r.countAfter(),
                r.exposureAfter(),
                r.countBefore() + r.countAfter() > 0
                        ? Optional.of(new Ratio(finite(r.ratio()), r.lower(), finite(r.upper())))
                        : Optional.empty(),
                r.pTwoSided());
    }

    private static Object finite(double ratio) {
        return Double.isFinite(ratio) ? ratio : "infinite";
    }
}
