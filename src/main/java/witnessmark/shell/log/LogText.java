package witnessmark.shell.log;

import java.util.List;
import java.util.Locale;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.TruckResult;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.summary.LogVerdict;
import witnessmark.triplog.summary.TripSummary;

/** What logs came to, as text: the trip, the events seen, and for each other kind whether it could have been seen. */
final class LogText {
    /** To stand wherever habit events are told. */
    static final String NAMES_A_TRUCK = "A log names a truck, not who drove it; and a worn or wrongly set part can look"
            + " like a habit. Read the rows, the duty record and the parts together before anybody is blamed.";

    private static final int CHART_ROWS = 8;
    private static final int MOST_LOGS_TOLD = 20;
    private static final double LEAST_HOURS = 1 / 3600.0;

    /** With fewer rows a second, their distance says more. */
    private static final double SLOW_HERTZ = 0.9;
    /** A gear of a quick run through the gears is held for about a second. */
    private static final double COUNTING_HERTZ = 1.6;

    private final Page page;

    LogText(Page page) {
        this.page = page;
    }

    /** One truck in full. */
    void print(String profile, TruckResult truck, WhichEvents which) {
        page.line(title(profile, truck));
        page.blank();
        headline(truck);
        logs(truck);
        trip(truck.summary(), countsAll(truck));
        new LogVerdicts(page, truck.summary()).print();
        events(truck, which);
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
        page.drawn(String.format("  %-24s %5s %9s %9s %7s", "truck", "logs", length().symbol(), "h:mm:ss", "events"));
        done.results()
                .forEach(r -> page.drawn(String.format(
                        Locale.ROOT,
                        "  %-24s %5d %9.1f %9s %7d%s",
                        shortened(r.truck(), 24),
                        r.trips().size(),
                        Unit.KILOMETRE.convert(r.summary().km(), length()),
                        ScreenFigures.clock(r.summary().coveredHours()),
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
            new LogVerdicts(page, truck.summary()).print();
            events(truck, WhichEvents.WORST);
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
                .filter(v -> v.state() == LogVerdict.State.CANNOT_BE_SEEN)
                .count();
        String events = s.events() == 0 ? "No event" : s.events() == 1 ? "1 event" : s.events() + " events";
        long acts = truck.trips().stream().mapToLong(TripResult::acts).sum();
        String done = acts > 0 && acts < s.events()
                ? ", " + acts + (acts == 1 ? " act" : " acts") + " with what followed,"
                : "";
        page.strong(events + done + " in " + distance + "; " + blind + " of "
                + s.verdicts().size() + " kinds cannot be seen here");
        if (truck.isPartial()) {
            page.strong("PARTIAL: the reading was stopped; this is what was read until then");
        }
    }

    private void logs(TruckResult truck) {
        page.heading("Logs read");
        List<TripResult> told = truck.trips().size() <= MOST_LOGS_TOLD
                ? truck.trips()
                : truck.trips().stream()
                        .filter(t -> !LogRemarks.of(t).isEmpty())
                        .toList();
        told.stream().limit(MOST_LOGS_TOLD).forEach(this::log);
        if (told.size() < truck.trips().size() || told.size() > MOST_LOGS_TOLD) {
            page.item((truck.trips().size() - Math.min(MOST_LOGS_TOLD, told.size())) + " more logs"
                    + (told.size() <= MOST_LOGS_TOLD ? ", without remarks" : "; --format json tells of all"));
        }
        truck.failures().forEach(f -> page.item("not read: " + f.replace("\n", " ")));
    }

    private void log(TripResult trip) {
        double hours = trip.summary().coveredHours();
        long rows = trip.report().rows();
        page.item(String.format(
                Locale.ROOT,
                "%s: %s, %,d %s over %s%s",
                trip.report().file().getFileName(),
                trip.report().format().name().toLowerCase(Locale.ROOT).replace("csv", "CSV"),
                rows,
                rows == 1 ? "row" : "rows",
                ScreenFigures.clock(hours),
                hours > 0 ? rate(rows / (3600 * hours)) : ""));
        LogRemarks.of(trip).forEach(r -> page.indented("      ", "      ", r));
    }

    private static String rate(double hertz) {
        return hertz >= SLOW_HERTZ
                ? String.format(Locale.ROOT, ", %.3g a second", hertz)
                : String.format(Locale.ROOT, hertz > 0.52 ? ", one every %.1f s" : ", one every %.0f s", 1 / hertz);
    }

    /** Whether rows come so close that no shift hides between two of them. */
    private static boolean countsAll(TruckResult truck) {
        return truck.trips().stream()
                .allMatch(t ->
                        t.report().rows() >= COUNTING_HERTZ * 3600 * t.summary().coveredHours());
    }

    private void trip(TripSummary s, boolean countsAll) {
        page.heading("Trip");
        row("distance", distance(s.km()));
        s.odometerKm().ifPresent(km -> row("by odometer", distance(km)));
        row(
                "time",
                ScreenFigures.clock(s.coveredHours()) + " covered, " + ScreenFigures.clock(s.movingHours())
                        + " moving, " + ScreenFigures.clock(s.engineHours()) + " with the engine running");
        row(
                "highest",
                SpeedUnits.of(page.units()).whole(Figure.given(s.highestKmh(), Unit.KILOMETRE_PER_HOUR))
                        + String.format(Locale.ROOT, ", %.0f rpm", s.highestRpm()));
        row(
                "shifts",
                s.shifts() == 0 && s.tellingHours() == 0 && s.movingHours() > 0
                        ? "cannot be counted at this rate"
                        : (countsAll ? "" : "at least ") + s.shifts() + ", of them " + s.leverShifts()
                                + " with the lever, " + s.rangeShifts() + " through the range");
        row("a gear fits in", String.format(Locale.ROOT, "%.0f %% of the driving time", 100 * s.gearKnownShare()));
        page.heading("Time in hand, h:mm:ss");
        s.hoursInHand().forEach((name, hours) -> {
            if (hours >= LEAST_HOURS) {
                double share = hours / Math.max(s.coveredHours(), hours);
                page.drawn(String.format(
                        Locale.ROOT,
                        "  %-12s %9s %6.1f %%  %s",
                        name,
                        ScreenFigures.clock(hours),
                        100 * share,
                        ScreenFigures.bar(share)));
            }
        });
    }

    private Unit length() {
        return page.units().shown(Unit.KILOMETRE);
    }

    private Unit speed() {
        return page.units().shown(Unit.KILOMETRE_PER_HOUR);
    }

    private String distance(double km) {
        String shown = String.format(Locale.ROOT, "%.1f %s", Unit.KILOMETRE.convert(km, length()), length().symbol());
        return page.units().equals(Units.BOTH)
                ? shown + String.format(Locale.ROOT, " (%.1f mi)", Unit.KILOMETRE.convert(km, Unit.MILE))
                : shown;
    }

    private void row(String name, String value) {
        page.indented(String.format("  %-16s", name), " ".repeat(18), value);
    }

    private void events(TruckResult truck, WhichEvents which) {
        boolean all = which == WhichEvents.ALL;
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
            TripCharts.timeline(truck.trips().get(0).timeline(), truck.table(), page.width() - 6, CHART_ROWS, speed())
                    .forEach(page::drawn);
        }
        if (truck.summary().movingHours() > 0) {
            page.heading("Time at each road and engine speed, darker for longer");
            TripCharts.speedMap(truck.speedMap(), page.width() - 7, speed()).forEach(page::drawn);
        }
    }
}
