package witnessmark.shell.log;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
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

    Map<String, Object> json() {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("before", LogJson.summary(before.summary()));
        map.put("after", LogJson.summary(after.summary()));
        map.put("kinds", changes.stream().map(LogChange::json).toList());
        map.put("caution", ComparePeriods.CAUTION);
        return map;
    }

    private static Map<String, Object> json(Change change) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("kind", change.kind().id());
        map.put(
                "chanceOf",
                change.kind().chance().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        map.put("outcome", change.outcome().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        if (change.rates().isEmpty()) {
            map.put("obstacle", change.obstacle());
            return map;
        }
        TwoRates r = change.rates().get();
        map.put("countBefore", r.countBefore());
        map.put("chancesBefore", r.exposureBefore());
        map.put("countAfter", r.countAfter());
        map.put("chancesAfter", r.exposureAfter());
        if (r.countBefore() + r.countAfter() > 0) {
            map.put("ratio", finite(r.ratio()));
            map.put("lower95", r.lower());
            map.put("upper95", finite(r.upper()));
        }
        map.put("pTwoSided", r.pTwoSided());
        return map;
    }

    /** JSON knows no infinity: a ratio over none before is told as a word. */
    private static Object finite(double ratio) {
        return Double.isFinite(ratio) ? ratio : "infinite";
    }
}
