package witnessmark.triplog.evidence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.triplog.event.EventFigure;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.summary.LogVerdict;
import witnessmark.triplog.summary.RecordedTimes;
import witnessmark.triplog.summary.RecordedTimes.Odometer;
import witnessmark.triplog.summary.TripSummary;

/** Takes from the logs of one truck what their weight needs. */
public final class TakeRecord {
    private static final double FINEST = 1e6;

    private TakeRecord() {}

    /**
     * What the logs held.
     *
     * @param sum over all the logs
     * @param events of all the logs
     * @param table the truck's numbers they were read with
     * @param times of each log
     */
    public static LogRecord of(TripSummary sum, List<HabitEvent> events, GearTable table, List<RecordedTimes> times) {
        Map<String, LogRecord.Tally> tallies = new LinkedHashMap<>();
        for (LogFinding finding : LogFindings.shipped().rows()) {
            LogVerdict verdict = sum.verdict(finding.kind());
            // A log too short to say anything still adds to others.
            if (verdict.state() != LogVerdict.State.CANNOT_BE_SEEN || verdict.chances() > 0) {
                tallies.put(finding.id(), tally(finding, verdict, events, table));
            }
        }
        return new LogRecord(
                times.stream().flatMap(t -> t.spans().stream()).toList(),
                times.stream().flatMap(t -> t.odometer().stream()).reduce(Odometer::spanning),
                rounded(sum.km()),
                rounded(sum.coveredHours()),
                rounded(sum.movingHours()),
                rounded(sum.tellingHours()),
                rounded(sum.fittingHours()),
                rounded(events.stream()
                        .filter(e -> e.kind() == EventKind.COAST_IN_NEUTRAL)
                        .mapToDouble(e -> e.figures().get(EventFigure.DISTANCE_KM))
                        .sum()),
                tallies,
                List.of());
    }

    /** What neither speaks for a finding nor may be held against it takes the chances away. */
    private static LogRecord.Tally tally(
            LogFinding finding, LogVerdict verdict, List<HabitEvent> events, GearTable table) {
        Map<LogFinding.Fit, List<HabitEvent>> byFit = events.stream()
                .filter(e -> e.kind() == finding.kind())
                .collect(Collectors.groupingBy(e -> finding.fit(e, table)));
        List<HabitEvent> fitting = byFit.getOrDefault(LogFinding.Fit.SPEAKS_FOR, List.of());
        boolean open = fitting.isEmpty() && byFit.containsKey(LogFinding.Fit.OPEN);
        double weight = fitting.stream().mapToDouble(HabitEvent::confidence).sum();
        return new LogRecord.Tally(fitting.size(), rounded(weight), open ? 0 : rounded(verdict.chances()));
    }

    /** A case keeps no more figures than mean anything. */
    private static double rounded(double value) {
        return Math.round(value * FINEST) / FINEST;
    }
}
