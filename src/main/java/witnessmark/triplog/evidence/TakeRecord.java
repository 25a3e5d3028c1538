package witnessmark.triplog.evidence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.triplog.event.EventFigure;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.summary.LogVerdict;
import witnessmark.triplog.summary.RecordedTimes;
import witnessmark.triplog.summary.TripSummary;

/** Takes from a log what its weight needs. */
public final class TakeRecord {
    private TakeRecord() {}

    /**
     * What one log held. Of several the records are added: nothing is settled here that another log could unsettle, so
     * that logs come to the same in whatever order and company they are read.
     *
     * @param sum over the log
     * @param events of the log
     * @param table the truck's numbers it was read with
     * @param times when it was recorded
     */
    public static LogRecord of(TripSummary sum, List<HabitEvent> events, GearTable table, RecordedTimes times) {
        Map<String, LogRecord.Tally> tallies = new LinkedHashMap<>();
        for (LogFinding finding : LogFindings.shipped().rows()) {
            LogVerdict verdict = sum.verdict(finding.kind());
            // A log too short to say anything still adds to others.
            if (verdict.state() != LogVerdict.State.CANNOT_BE_SEEN || verdict.chances() > 0) {
                tallies.put(finding.id(), tally(finding, verdict, events, table));
            }
        }
        return new LogRecord(
                times.spans(),
                times.odometer(),
                LogRecord.rounded(sum.km()),
                LogRecord.rounded(sum.coveredHours()),
                LogRecord.rounded(sum.movingHours()),
                LogRecord.rounded(sum.tellingHours()),
                LogRecord.rounded(sum.fittingHours()),
                LogRecord.rounded(events.stream()
                        .filter(e -> e.kind() == EventKind.COAST_IN_NEUTRAL)
                        .mapToDouble(e -> e.figures().get(EventFigure.DISTANCE_KM))
                        .sum()),
                tallies,
                List.of(),
                times.marks());
    }

    private static LogRecord.Tally tally(
            LogFinding finding, LogVerdict verdict, List<HabitEvent> events, GearTable table) {
        long count = 0;
        double weight = 0;
        long open = 0;
        for (HabitEvent event : events) {
            if (event.kind() == finding.kind()) {
                switch (finding.fit(event, table)) {
                    case SPEAKS_FOR -> {
                        count++;
                        weight += event.confidence();
                    }
                    case OPEN -> open++;
                    case NOT_MEANT -> {}
                }
            }
        }
        return new LogRecord.Tally(count, LogRecord.rounded(weight), LogRecord.rounded(verdict.chances()), open);
    }
}
