package witnessmark.triplog.event;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Puts events together that are one act with its consequences: low range taken too fast, the overspeed that follows and
 * the single press of the same shift were done once, and are one witness.
 */
public final class GroupActs {
    private static final long BEFORE_MICROS = 2_000_000;
    private static final long AFTER_MICROS = 5_000_000;
    /** Events of one act lie closer than this. */
    private static final long FARTHEST_MICROS = 90_000_000;

    private static final Set<EventKind> SHIFT =
            Set.of(EventKind.SHIFT_WITHOUT_CLUTCH, EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH);

    private static final Set<EventKind> OF_A_START =
            Set.of(EventKind.CLUTCH_DROPPED, EventKind.LUGGING, EventKind.RIDING_CLUTCH, EventKind.CLUTCH_SLIP);

    /** What may follow from each kind; the graver ones first. */
    private static final List<Map.Entry<EventKind, Set<EventKind>>> FOLLOWS = List.of(
            Map.entry(
                    EventKind.LOW_RANGE_ABOVE_CEILING,
                    Set.of(
                            EventKind.OVERDRIVE_TO_LOW,
                            EventKind.ENGINE_OVERSPEED,
                            EventKind.DISC_OVERSPEED,
                            EventKind.RANGE_MOVED_IN_NEUTRAL,
                            EventKind.SHIFT_WITHOUT_CLUTCH,
                            EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH)),
            Map.entry(
                    EventKind.OVERDRIVE_TO_LOW,
                    Set.of(
                            EventKind.ENGINE_OVERSPEED,
                            EventKind.RANGE_MOVED_IN_NEUTRAL,
                            EventKind.SHIFT_WITHOUT_CLUTCH,
                            EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH)),
            Map.entry(EventKind.RANGE_MOVED_IN_NEUTRAL, SHIFT),
            Map.entry(EventKind.START_IN_HIGH_RANGE, OF_A_START),
            Map.entry(EventKind.START_GEAR_TOO_HIGH, OF_A_START),
            Map.entry(EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH, Set.of(EventKind.ENGINE_OVERSPEED)),
            Map.entry(EventKind.SHIFT_WITHOUT_CLUTCH, Set.of(EventKind.ENGINE_OVERSPEED)));

    private final List<HabitEvent> events;
    private final HabitEvent.Act[] acts;

    private GroupActs(List<HabitEvent> events) {
        this.events = events;
        this.acts = new HabitEvent.Act[events.size()];
    }

    /** The same events, each with its act; they must come in the order of their lines. */
    public static List<HabitEvent> of(List<HabitEvent> events) {
        return new GroupActs(events).group();
    }

    private List<HabitEvent> group() {
        int[] main = new int[events.size()];
        for (int i = 0; i < main.length; i++) {
            main[i] = main(i);
        }
        int number = 0;
        for (int i = 0; i < main.length; i++) {
            if (main[i] == i) {
                acts[i] = new HabitEvent.Act(++number, Optional.empty());
            }
        }
        List<HabitEvent> grouped = new ArrayList<>();
        for (int i = 0; i < main.length; i++) {
            int root = root(main, i);
            Optional<EventKind> cause = root == i
                    ? Optional.empty()
                    : Optional.of(events.get(main[i]).kind());
            grouped.add(events.get(i).with(new HabitEvent.Act(acts[root].number(), cause)));
        }
        return grouped;
    }

    private static int root(int[] main, int of) {
        int at = of;
        while (main[at] != at) {
            at = main[at];
        }
        return at;
    }

    /** The event that this one follows from; itself if none. Kinds are in ranks, so nothing follows from itself. */
    private int main(int of) {
        for (Map.Entry<EventKind, Set<EventKind>> rule : FOLLOWS) {
            if (rule.getValue().contains(events.get(of).kind())) {
                for (int i = first(of); i < events.size() && isNear(i, of); i++) {
                    if (events.get(i).kind() == rule.getKey() && isOneAct(events.get(i), events.get(of))) {
                        return i;
                    }
                }
            }
        }
        return of;
    }

    private int first(int of) {
        int i = of;
        while (i > 0 && isNear(i - 1, of)) {
            i--;
        }
        return i;
    }

    private boolean isNear(int i, int of) {
        return Math.abs(events.get(i).startMicros() - events.get(of).startMicros()) < FARTHEST_MICROS;
    }

    private static boolean isOneAct(HabitEvent act, HabitEvent other) {
        boolean own =
                other.kind() == EventKind.ENGINE_OVERSPEED && other.figures().is(EventFigure.IN_ONE_GEAR);
        return !own
                && other.startMicros() >= act.startMicros() - BEFORE_MICROS
                && other.startMicros() <= act.stretch().endMicros() + AFTER_MICROS;
    }
}
