package witnessmark.shell.log;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import witnessmark.fleet.FleetResult;
import witnessmark.fleet.FleetTable;
import witnessmark.fleet.PoolTruck.Pooled;
import witnessmark.fleet.TruckDay;
import witnessmark.fleet.UncountedLog;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;

/** What a fleet's logs came to, in short; the tables hold the rest. */
record FleetText(FleetResult result, String out) {
    private static final int MOST_TRUCKS = 40;
    private static final int MOST_UNCOUNTED = 20;

    void print(Page page) {
        page.line(count(result.trucks().size(), "truck") + ", " + count(logs(), "log") + " counted, "
                + result.uncounted().size() + " not");
        page.blank();
        page.drawn(String.format("  %-28s %5s %5s %10s %9s %6s", "truck", "days", "logs", "km", "h:mm:ss", "acts"));
        result.trucks().entrySet().stream()
                .limit(MOST_TRUCKS)
                .forEach(e -> page.drawn(String.format(
                        Locale.ROOT,
                        "  %-28s %5d %5d %10.1f %9s %6d",
                        shortened(e.getKey()),
                        e.getValue().days().size(),
                        e.getValue().counted().size(),
                        km(e.getValue()),
                        ScreenFigures.clock(hours(e.getValue())),
                        acts(e.getValue()))));
        if (result.trucks().size() > MOST_TRUCKS) {
            page.line("and " + (result.trucks().size() - MOST_TRUCKS) + " more trucks");
        }
        uncounted(page);
        page.heading("Tables");
        for (FleetTable table : FleetTable.values()) {
            page.item(out + "/" + table.fileName() + ".csv");
        }
        page.blank();
        page.line(LogText.NAMES_A_TRUCK);
        page.line("Into the trucks' cases: log import-results " + out + "/days.csv");
        page.flush();
    }

    private void uncounted(Page page) {
        List<UncountedLog> uncounted = result.uncounted();
        if (!uncounted.isEmpty()) {
            page.heading("Not counted");
            uncounted.stream().limit(MOST_UNCOUNTED).forEach(u -> page.item(u.path() + ": " + u.reason()));
            if (uncounted.size() > MOST_UNCOUNTED) {
                page.item("and " + (uncounted.size() - MOST_UNCOUNTED) + " more; not-counted.csv tells of all");
            }
        }
    }

    private static String count(long number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    private static String shortened(String text) {
        return text.length() <= 28 ? text : text.substring(0, 25) + "...";
    }

    private long logs() {
        return result.trucks().values().stream()
                .mapToLong(t -> t.counted().size())
                .sum();
    }

    private static double km(Pooled truck) {
        return truck.days().stream().mapToDouble(d -> d.record().km()).sum();
    }

    private static double hours(Pooled truck) {
        return truck.days().stream().mapToDouble(d -> d.record().coveredHours()).sum();
    }

    private static long acts(Pooled truck) {
        return truck.days().stream().mapToLong(TruckDay::acts).sum();
    }

    /** The same for a program. */
    record Form(long trucks, long logs, long notCounted, Map<String, String> tables) {}

    Form form() {
        Map<String, String> tables = new LinkedHashMap<>();
        for (FleetTable table : FleetTable.values()) {
            tables.put(table.fileName(), out + "/" + table.fileName() + ".csv");
        }
        return new Form(result.trucks().size(), logs(), result.uncounted().size(), tables);
    }
}
