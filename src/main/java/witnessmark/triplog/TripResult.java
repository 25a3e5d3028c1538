package witnessmark.triplog;

import java.util.ArrayList;
import java.util.List;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.evidence.DoubtRatios;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.gear.FrozenSignal;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.SpeedFactor;
import witnessmark.triplog.read.ClockFaults;
import witnessmark.triplog.read.ReadReport;
import witnessmark.triplog.summary.RecordedTimes;
import witnessmark.triplog.summary.SpeedMap;
import witnessmark.triplog.summary.SumUp;
import witnessmark.triplog.summary.Timeline;
import witnessmark.triplog.summary.TripSummary;

/**
 * One log, read.
 *
 * @param report how the reading went; its {@code partial} marks a result that was stopped before the end
 * @param clock what the log's clock did
 * @param factor the true road speed factor of this truck in this log
 * @param factorDrift by how much the factor of the whole log differs from that of its beginning
 * @param mappingNotes what a person should look at in a guessed mapping; empty otherwise
 * @param frozen stretches in which a signal stood still while others moved, and was not used
 * @param times when it was recorded
 * @param summary what the trip came to
 * @param events the events in the order of their first lines, at most {@link ReadTrip#MOST_EVENTS}
 * @param eventsLeftOut events beyond that number, counted in the summary but not kept
 * @param record what its weight as evidence needs, of all these events
 * @param timeline the drive in at most some hundred bins
 * @param speedMap time by road speed and engine speed
 * @param sums the sums, for the joining of logs
 * @param table the truck's numbers it was read with
 */
public record TripResult(
        ReadReport report,
        ClockFaults clock,
        SpeedFactor factor,
        double factorDrift,
        List<String> mappingNotes,
        List<FrozenSignal> frozen,
        RecordedTimes times,
        TripSummary summary,
        List<HabitEvent> events,
        long eventsLeftOut,
        LogRecord record,
        List<Timeline.Bin> timeline,
        SpeedMap speedMap,
        SumUp sums,
        GearTable table) {

    /** How many acts the events that were kept come to; what follows from an act counts with it. */
    public long acts() {
        return events.stream().filter(e -> !e.isConsequence()).count();
    }

    /** Why this log may be of another truck, one sentence each; empty where its ratios give no reason. */
    public List<String> doubts(String name) {
        List<String> doubts = new ArrayList<>(DoubtRatios.of(name, factor, table, summary.hoursInHand()));
        DoubtRatios.misfit(name, record).ifPresent(doubts::add);
        return doubts;
    }

    public boolean isPartial() {
        return report.partial();
    }

    /** The same without its pictures and with at most so many events: what a job over many files keeps of each. */
    TripResult slim(int mostEvents) {
        int kept = Math.min(mostEvents, events.size());
        return new TripResult(
                report,
                clock,
                factor,
                factorDrift,
                mappingNotes,
                frozen,
                times,
                summary,
                List.copyOf(events.subList(0, kept)),
                eventsLeftOut + events.size() - kept,
                record,
                List.of(),
                new SpeedMap(),
                new SumUp(table),
                table);
    }
}
