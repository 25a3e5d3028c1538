package witnessmark.shell.log;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.summary.CountInterval;
import witnessmark.triplog.summary.LogVerdict;
import witnessmark.triplog.summary.ShareInterval;
import witnessmark.triplog.summary.TripSummary;

/** For each kind of event: seen, not seen though it could have been, or not to be seen in the log, as text. */
final class LogVerdicts {
    private final Page page;
    private final TripSummary summary;

    LogVerdicts(Page page, TripSummary summary) {
        this.page = page;
        this.summary = summary;
    }

    void print() {
        seen();
        notSeen();
        cannotBeSeen();
    }

    private void seen() {
        List<LogVerdict> seen = in(LogVerdict.State.SEEN);
        if (seen.isEmpty()) {
            return;
        }
        page.heading("Seen");
        seen.forEach(v -> page.indented(
                String.format("%5d x ", v.count()), "        ", v.kind().words() + rate(v)));
        page.blank();
        page.line(LogText.NAMES_A_TRUCK);
    }

    private String rate(LogVerdict v) {
        boolean counted = v.kind().chance() != EventKind.Chance.DISTANCE && v.chances() >= 1;
        if (counted && v.count() <= Math.round(v.chances())) {
            long of = Math.round(v.chances());
            return ", " + v.count() + " of " + v.kind().chance().words(v.chances()) + " "
                    + ShareInterval.of(v.count(), of).words();
        }
        String basis = counted ? ", in " + v.kind().chance().words(v.chances()) : "";
        CountInterval per100 = summary.per100km().get(v.kind());
        return per100 == null
                ? basis
                : basis
                        + String.format(
                                Locale.ROOT,
                                "; %s per 100 km (95 %%: %s to %s)",
                                ScreenFigures.figure(per100.rate()),
                                ScreenFigures.figure(per100.lower()),
                                ScreenFigures.figure(per100.upper()));
    }

    private void notSeen() {
        List<LogVerdict> none = in(LogVerdict.State.NOT_SEEN_THOUGH_POSSIBLE);
        if (none.isEmpty()) {
            return;
        }
        page.heading("Not seen, though it could have been");
        Map<String, List<LogVerdict>> byBasis = none.stream()
                .collect(Collectors.groupingBy(LogVerdicts::basis, LinkedHashMap::new, Collectors.toList()));
        byBasis.forEach((basis, kinds) -> page.item(basis + ": " + words(kinds)));
    }

    /** What "not seen" rests on; over a distance with the exact upper limit, for none seen leaves room for some. */
    private static String basis(LogVerdict v) {
        return v.kind().chance() == EventKind.Chance.DISTANCE
                ? v.reason() + ", so at most "
                        + ScreenFigures.figure(CountInterval.of(0, v.chances()).upper()) + " per 100 km (95 %)"
                : v.reason();
    }

    private static String words(List<LogVerdict> verdicts) {
        return verdicts.stream().map(v -> v.kind().words()).collect(Collectors.joining("; "));
    }

    private void cannotBeSeen() {
        List<LogVerdict> blind = in(LogVerdict.State.CANNOT_BE_SEEN);
        if (blind.isEmpty()) {
            return;
        }
        page.heading("Cannot be seen in this log; it says nothing for or against");
        Map<String, List<LogVerdict>> byReason = blind.stream()
                .collect(Collectors.groupingBy(LogVerdict::reason, LinkedHashMap::new, Collectors.toList()));
        byReason.forEach((reason, kinds) -> page.item(reason + ": " + words(kinds)));
    }

    private List<LogVerdict> in(LogVerdict.State state) {
        return summary.verdicts().stream().filter(v -> v.state() == state).toList();
    }
}
