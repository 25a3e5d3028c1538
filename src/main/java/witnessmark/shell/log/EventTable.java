package witnessmark.shell.log;

import java.util.List;
import java.util.Locale;
import witnessmark.shell.print.CsvTable;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.summary.LogMoment;

/** Events as CSV rows, and their moments in words. */
public final class EventTable {
    private EventTable() {}

    /** The names of the columns of {@link #row}. */
    public static String header() {
        return "truck,file,partial,kind,start,seconds,road_kmh,engine_rpm,gear_before,gear_after,severity,grade,confidence,"
                + "first_line,last_line,sentence";
    }

    /**
     * One event as a CSV row.
     *
     * @param partial whether the reading of the file was stopped before its end
     */
    public static String row(String truck, String file, boolean partial, HabitEvent e) {
        return CsvTable.line(List.of(
                truck,
                file,
                partial ? "yes" : "no",
                e.kind().id(),
                moment(e.startMicros()),
                round(e.seconds(), 1),
                round(e.roadKmh(), 1),
                Math.round(e.engineRpm()),
                e.gearBefore().orElse(""),
                e.gearAfter().orElse(""),
                round(e.severity(), 2),
                e.grade().name().toLowerCase(Locale.ROOT),
                round(e.confidence(), 2),
                e.firstLine(),
                e.lastLine(),
                e.sentence()));
    }

    /** A date and time in UTC if the log knows the date, else hours, minutes and seconds of the log. */
    public static String moment(long micros) {
        return LogMoment.words(micros);
    }

    private static double round(double value, int places) {
        double scale = Math.pow(10, places);
        return Math.round(value * scale) / scale;
    }
}
