package witnessmark.shell.log;

import java.io.PrintWriter;
import witnessmark.shell.print.Terminal;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.TruckResult;
import witnessmark.triplog.event.HabitEvent;

/** What logs came to, for a spreadsheet: one row for each kind of event, or for each event. */
final class LogCsv {
    private LogCsv() {}

    static void print(PrintWriter out, LogJob.Done done, WhichEvents which) {
        if (which == WhichEvents.ALL) {
            events(out, done);
        } else {
            out.println(SummaryTable.header());
            for (TruckResult truck : done.results()) {
                SummaryTable.rows(truck.truck(), done.stopped(), truck.summary())
                        .forEach(line -> Terminal.line(out, line));
            }
        }
        out.flush();
    }

    private static void events(PrintWriter out, LogJob.Done done) {
        out.println(EventTable.header());
        for (TruckResult truck : done.results()) {
            for (TripResult trip : truck.trips()) {
                String file = trip.report().file().toString();
                for (HabitEvent event : trip.events()) {
                    Terminal.line(out, EventTable.row(truck.truck(), file, trip.isPartial(), event));
                }
            }
        }
    }
}
