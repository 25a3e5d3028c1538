package witnessmark.shell;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.TruckResult;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.summary.CountInterval;
import witnessmark.triplog.summary.EventTable;
import witnessmark.triplog.summary.TerminalCharts;
import witnessmark.triplog.summary.TripSummary;
import witnessmark.triplog.summary.Verdict;

/** What logs came to, as text: the trip, the events seen, and for each other kind whether it could have been seen. */
final class LogText {
    /** To stand wherever habit events are told. */
    static final String NAMES_A_TRUCK = "A log names a truck, not who drove it; and a worn or wrongly set part can look"
            + " like a habit. Read the rows, the duty record and the parts together before anybody is blamed.";

    private static final int CHART_ROWS = 8;
    private static final int MOST_LOGS_TOLD = 20;
    private static final double LEAST_HOURS = 1 / 3600.0;

    private final Page page;

    LogText(Page page) {
        this.page = page;
    }

    /** One truck in full. */
    void print(String profile, TruckResult truck, boolean allEvents) {
        page.line(title(profile, truck));
        page.blank();
        headline(truck);
        logs(truck);
        trip(truck.summary());
        seen(truck.summary());
        notSeen(truck.summary());
        cannotBeSeen(truck.summary());
        events(truck, allEvents);
        charts(truck);
    }

    private static String title(String profile, TruckResult truck) {
        return profile.contains(truck.truck()) ? profile : truck.truck() + ", read with the numbers of " + profile;
    }

    /** Many trucks: one line each, then what was seen in each. */
    void printAll(LogJob.Done done) {
        page.line(done.results().size() + " trucks, "
                + done.results().stream().mapToInt(r -> r.trips().size()).sum() + " logs read");
        page.blank();
        page.drawn(String.format("  %-24s %5s %9s %9s %7s", "truck", "logs", "km", "h:mm:ss", "events"));
        done.results()
                .forEach(r -> page.drawn(String.format(
                        Locale.ROOT,
                        "  %-24s %5d %9.1f %9s %7d%s",
                        shortened(r.truck(), 24),
                        r.trips().size(),
                        r.summary().km(),
                        Say.clock(r.summary().coveredHours()),
                        r.summary().events(),
                        r.isPartial() ? " partial" : "")));
        for (TruckResult truck : done.results()) {
            page.heading(truck.truck());
            page.line("Read with the numbers of " + done.title(truck));
            if (truck.trips().isEmpty()) {
                logs(truck);
                continue;
            }
            headline(truck);
            logs(truck);
            seen(truck.summary());
            notSeen(truck.summary());
            cannotBeSeen(truck.summary());
            events(truck, false);
        }
        page.blank();
        page.line("One truck alone, with charts: log read TRUCK FILE ...");
    }

    private static String shortened(String text, int most) {
        return text.length() <= most ? text : text.substring(0, most - 3) + "...";
    }

    private void headline(TruckResult truck) {
        TripSummary s = truck.summary();
        String distance = EventKind.Chance.DISTANCE.words(s.km() / 100);
        long blind = s.verdicts().stream()
                .filter(v -> v.state() == Verdict.State.CANNOT_BE_SEEN)
                .count();
        String events =
                s.events() == 0 ? "No habit event" : s.events() == 1 ? "1 habit event" : s.events() + " habit events";
        page.strong(events + " in " + distance + "; " + blind + " of "
                + s.verdicts().size() + " kinds cannot be seen here");
        if (truck.isPartial()) {
            page.strong("PARTIAL: the reading was stopped; this is what was read until then");
        }
    }

    private void logs(TruckResult truck) {
        page.heading("Logs read");
        List<TripResult> told = truck.trips().size() <= MOST_LOGS_TOLD
                ? truck.trips()
                : truck.trips().stream().filter(t -> !remarks(t).isEmpty()).toList();
        told.stream().limit(MOST_LOGS_TOLD).forEach(this::log);
        if (told.size() < truck.trips().size() || told.size() > MOST_LOGS_TOLD) {
            page.item((truck.trips().size() - Math.min(MOST_LOGS_TOLD, told.size())) + " more logs"
                    + (told.size() <= MOST_LOGS_TOLD ? ", without remarks" : "; --format json tells of all"));
        }
        truck.failures().forEach(f -> page.item("not read: " + f.replace("\n", " ")));
    }

    private void log(TripResult trip) {
        double hours = trip.summary().coveredHours();
        String rate = hours > 0
                ? String.format(Locale.ROOT, ", %.3g a second", trip.report().rows() / (3600 * hours))
                : "";
        page.item(String.format(
                Locale.ROOT,
                "%s: %s, %,d rows over %s%s",
                trip.report().file().getFileName(),
                trip.report().format().name().toLowerCase(Locale.ROOT).replace("csv", "CSV"),
                trip.report().rows(),
                Say.clock(hours),
                rate));
        remarks(trip).forEach(r -> page.indented("      ", "      ", r));
    }

    /** What a person should know of how the reading went; empty if all went well. */
    static List<String> remarks(TripResult trip) {
        List<String> remarks = new ArrayList<>();
        if (trip.isPartial()) {
            remarks.add("stopped before its end");
        }
        trip.mappingNotes().forEach(n -> remarks.add("columns guessed: " + n));
        trip.report().broken().forEach(b -> remarks.add(b.sentence()));
        clock(trip, remarks);
        double away = 100 * (trip.factor().factor() - 1);
        if (trip.factor().isKnown() && Math.abs(away) >= 1) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "the ratios fit if the output turns %.0f %% %s than road speed and tyre say; reckoned with that",
                    Math.abs(away),
                    away > 0 ? "faster" : "slower"));
        }
        if (trip.factor().isAmbiguous()) {
            remarks.add("two tyre sizes fit the ratios nearly as well; check tyre and axle in the truck's profile");
        }
        if (trip.eventsLeftOut() > 0) {
            remarks.add(trip.eventsLeftOut() + " events are counted but not listed");
        }
        return remarks;
    }

    private static void clock(TripResult trip, List<String> remarks) {
        var clock = trip.clock();
        if (clock.gaps() > 0) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "%d %s without rows, %.0f s together: nothing is assumed of that time",
                    clock.gaps(),
                    clock.gaps() == 1 ? "gap" : "gaps",
                    clock.gapSeconds()));
        }
        if (clock.duplicates() + clock.backward() > 0) {
            remarks.add(clock.duplicates() + " rows with the time of the row before and " + clock.backward()
                    + " older than it, left out");
        }
        if (clock.setBack() + clock.jumpsAhead() > 0) {
            remarks.add("the clock was set back " + clock.setBack() + " times and went ahead by more than a day "
                    + clock.jumpsAhead() + " times");
        }
    }

    private void trip(TripSummary s) {
        page.heading("Trip");
        row("distance", String.format(Locale.ROOT, "%.1f km (%.1f mi)", s.km(), s.km() / 1.609344));
        s.odometerKm().ifPresent(km -> row("by odometer", String.format(Locale.ROOT, "%.1f km", km)));
        row(
                "time",
                Say.clock(s.coveredHours()) + " covered, " + Say.clock(s.movingHours()) + " moving, "
                        + Say.clock(s.engineHours()) + " with the engine running");
        row("highest", String.format(Locale.ROOT, "%.0f km/h, %.0f rpm", s.highestKmh(), s.highestRpm()));
        row(
                "shifts",
                s.shifts() + ", of them " + s.leverShifts() + " with the lever, " + s.rangeShifts()
                        + " through the range");
        row("a gear fits in", String.format(Locale.ROOT, "%.0f %% of the driving time", 100 * s.gearKnownShare()));
        page.heading("Time in hand, h:mm:ss");
        s.hoursInHand().forEach((name, hours) -> {
            if (hours >= LEAST_HOURS) {
                double share = hours / Math.max(s.coveredHours(), hours);
                page.drawn(String.format(
                        Locale.ROOT, "  %-12s %9s %6.1f %%  %s", name, Say.clock(hours), 100 * share, Say.bar(share)));
            }
        });
    }

    private void row(String name, String value) {
        page.indented(String.format("  %-16s", name), " ".repeat(18), value);
    }

    private void seen(TripSummary s) {
        List<Verdict> seen = in(s, Verdict.State.SEEN);
        if (seen.isEmpty()) {
            return;
        }
        page.heading("Seen");
        seen.forEach(v -> page.indented(
                String.format("%5d x ", v.count()), "        ", v.kind().words() + rate(s, v)));
        page.blank();
        page.line(NAMES_A_TRUCK);
    }

    private static String rate(TripSummary s, Verdict v) {
        String basis = v.kind().chance() != EventKind.Chance.DISTANCE && v.chances() > 0
                ? ", in " + v.kind().chance().words(v.chances())
                : "";
        CountInterval per100 = s.per100km().get(v.kind());
        return per100 == null
                ? basis
                : basis
                        + String.format(
                                Locale.ROOT,
                                "; %s per 100 km (95 %%: %s to %s)",
                                Say.figure(per100.rate()),
                                Say.figure(per100.lower()),
                                Say.figure(per100.upper()));
    }

    private void notSeen(TripSummary s) {
        List<Verdict> none = in(s, Verdict.State.NOT_SEEN_THOUGH_POSSIBLE);
        if (none.isEmpty()) {
            return;
        }
        page.heading("Not seen, though it could have been");
        Map<String, List<Verdict>> byBasis =
                none.stream().collect(Collectors.groupingBy(LogText::basis, LinkedHashMap::new, Collectors.toList()));
        byBasis.forEach((basis, kinds) -> page.item(basis + ": " + words(kinds)));
    }

    /** What "not seen" rests on; over a distance with the exact upper limit, for none seen leaves room for some. */
    private static String basis(Verdict v) {
        return v.kind().chance() == EventKind.Chance.DISTANCE
                ? v.reason() + ", so at most "
                        + Say.figure(CountInterval.of(0, v.chances()).upper()) + " per 100 km (95 %)"
                : v.reason();
    }

    private static String words(List<Verdict> verdicts) {
        return verdicts.stream().map(v -> v.kind().words()).collect(Collectors.joining("; "));
    }

    private void cannotBeSeen(TripSummary s) {
        List<Verdict> blind = in(s, Verdict.State.CANNOT_BE_SEEN);
        if (blind.isEmpty()) {
            return;
        }
        page.heading("Cannot be seen in this log; it says nothing for or against");
        Map<String, List<Verdict>> byReason =
                blind.stream().collect(Collectors.groupingBy(Verdict::reason, LinkedHashMap::new, Collectors.toList()));
        byReason.forEach((reason, kinds) -> page.item(reason + ": " + words(kinds)));
    }

    private static List<Verdict> in(TripSummary s, Verdict.State state) {
        return s.verdicts().stream().filter(v -> v.state() == state).toList();
    }

    private void events(TruckResult truck, boolean all) {
        List<TruckResult.Shown> shown = all ? everyEvent(truck) : truck.worst();
        if (shown.isEmpty()) {
            return;
        }
        page.heading(all ? "Every event, in order" : shown.size() == 1 ? "The event" : "The hardest events first");
        boolean name = truck.trips().size() > 1;
        for (int i = 0; i < shown.size(); i++) {
            HabitEvent event = shown.get(i).event();
            page.numbered(
                    i + 1,
                    moment(event.startMicros()) + ", " + event.grade().name().toLowerCase(Locale.ROOT) + ": "
                            + event.sentence());
            page.under(String.format(
                    Locale.ROOT,
                    "%slines %d to %d, %.0f %% sure",
                    name ? shown.get(i).trip().report().file().getFileName() + ", " : "",
                    event.firstLine(),
                    event.lastLine(),
                    100 * event.confidence()));
        }
    }

    private static String moment(long micros) {
        return EventTable.moment(micros)
                .replace('T', ' ')
                .replaceFirst("(\\.\\d)00Z$", "$1Z")
                .replace("Z", " UTC");
    }

    private static List<TruckResult.Shown> everyEvent(TruckResult truck) {
        return truck.trips().stream()
                .flatMap(t -> t.events().stream().map(e -> new TruckResult.Shown(t, e)))
                .toList();
    }

    private void charts(TruckResult truck) {
        if (truck.trips().size() == 1 && !truck.trips().get(0).timeline().isEmpty()) {
            page.heading("Road speed over the covered time, and the gear in hand");
            TerminalCharts.timeline(truck.trips().get(0).timeline(), truck.table(), page.width() - 6, CHART_ROWS)
                    .forEach(page::drawn);
        }
        if (truck.summary().movingHours() > 0) {
            page.heading("Time at each road and engine speed, darker for longer");
            TerminalCharts.speedMap(truck.speedMap(), page.width() - 7).forEach(page::drawn);
        }
    }
}
