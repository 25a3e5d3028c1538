package witnessmark.triplog.summary;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;

/**
 * What one log, or all logs of one truck, came to.
 *
 * @param km distance by road speed
 * @param odometerKm distance by the odometer, where the log has it
 * @param coveredHours time that the rows cover, gaps left out
 * @param movingHours of it on the move
 * @param tellingHours of it driving above idle and 10 km/h with the pedal up, in logs quick enough to tell the gear
 * @param fittingHours of those the hours in which a gear fitted
 * @param engineHours of it with the engine running
 * @param highestKmh highest believable road speed
 * @param highestRpm highest engine speed
 * @param hoursInHand time by what was in hand: gear names in their order, then neutral, standing and the rest
 * @param shifts changes of gear on the move that the ratios show
 * @param leverShifts of them with the lever
 * @param rangeShifts of them through the range
 * @param gearKnownShare share of the driving time in which a gear fitted, in slow logs too
 * @param eventCounts events by kind, zero left out
 * @param per100km events per 100 km with their exact 95 % interval; empty without distance
 * @param worst the ten hardest events, hardest first
 * @param verdicts for each kind what the log can say
 */
public record TripSummary(
        double km,
        Optional<Double> odometerKm,
        double coveredHours,
        double movingHours,
        double tellingHours,
        double fittingHours,
        double engineHours,
        double highestKmh,
        double highestRpm,
        Map<String, Double> hoursInHand,
        long shifts,
        long leverShifts,
        long rangeShifts,
        double gearKnownShare,
        Map<EventKind, Long> eventCounts,
        Map<EventKind, CountInterval> per100km,
        List<HabitEvent> worst,
        List<LogVerdict> verdicts) {

    public LogVerdict verdict(EventKind kind) {
        return verdicts.get(kind.ordinal());
    }

    public long events() {
        return eventCounts.values().stream().mapToLong(Long::longValue).sum();
    }
}
