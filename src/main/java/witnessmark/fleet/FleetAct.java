package witnessmark.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.summary.LogMoment;

/**
 * One act of a log: what was done at once, with the kinds of what followed from it. It says what the gearbox did, and
 * names no driver.
 *
 * @param event the act itself
 * @param followedBy the kinds of the events that follow from it, in order, each once
 */
public record FleetAct(HabitEvent event, List<EventKind> followedBy) {

    /** The acts among the events of one log. */
    static List<FleetAct> of(List<HabitEvent> events) {
        Map<Integer, List<EventKind>> followers = new LinkedHashMap<>();
        events.stream().filter(HabitEvent::isConsequence).forEach(e -> {
            List<EventKind> of = followers.computeIfAbsent(e.act().number(), n -> new ArrayList<>());
            if (!of.contains(e.kind())) {
                of.add(e.kind());
            }
        });
        return events.stream()
                .filter(e -> !e.isConsequence())
                .map(e -> new FleetAct(e, followers.getOrDefault(e.act().number(), List.of())))
                .toList();
    }

    /** Its number in the log, from 1. */
    public long number() {
        return event.act().number();
    }

    /** Its cells in {@link FleetTable#ACTS} from the kind on; those before are its number and what its log tells. */
    public List<Object> ownCells() {
        HabitEvent e = event;
        return List.of(
                e.kind().id(),
                LogMoment.words(e.startMicros()),
                FleetColumn.rounded(e.seconds(), 1),
                FleetColumn.rounded(e.roadKmh(), 1),
                FleetColumn.rounded(e.engineRpm(), 0),
                e.gearBefore().orElse(""),
                e.gearAfter().orElse(""),
                FleetColumn.rounded(e.severity(), 2),
                e.grade().name().toLowerCase(Locale.ROOT),
                FleetColumn.rounded(e.confidence(), 2),
                e.firstLine(),
                e.lastLine(),
                followedBy.stream().map(EventKind::id).collect(Collectors.joining(" ")),
                e.sentence());
    }
}
