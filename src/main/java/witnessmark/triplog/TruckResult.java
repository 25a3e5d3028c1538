package witnessmark.triplog;

import java.util.Comparator;
import java.util.List;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.summary.SpeedMap;
import witnessmark.triplog.summary.SumUp;
import witnessmark.triplog.summary.TripSummary;

/**
 * All logs of one truck, read.
 *
 * @param truck its name: that of the folder, or the file names' part before the first underscore
 * @param table the truck's numbers its logs were read with
 * @param summary over all its logs
 * @param speedMap over all its logs
 * @param trips each log that could be read, by file name
 * @param failures one line for each log that could not
 */
public record TruckResult(
        String truck,
        GearTable table,
        TripSummary summary,
        SpeedMap speedMap,
        List<TripResult> trips,
        List<String> failures) {

    /** One event and the log whose lines show it. */
    public record Shown(TripResult trip, HabitEvent event) {}

    /** The ten hardest events of all logs, hardest first. */
    public List<Shown> worst() {
        return trips.stream()
                .flatMap(t -> t.summary().worst().stream().map(e -> new Shown(t, e)))
                .sorted(Comparator.comparingDouble(
                        (Shown s) -> -s.event().severity() * s.event().confidence()))
                .limit(SumUp.WORST)
                .toList();
    }

    /**
     * What all logs held together, as if they were added one by one.
     *
     * @throws java.util.NoSuchElementException where no log could be read
     */
    public LogRecord record() {
        return trips.stream().map(TripResult::record).reduce(LogRecord::plus).orElseThrow();
    }

    /** All events that were kept, log by log. */
    public List<HabitEvent> events() {
        return trips.stream().flatMap(t -> t.events().stream()).toList();
    }

    public boolean isPartial() {
        return trips.stream().anyMatch(TripResult::isPartial);
    }
}
