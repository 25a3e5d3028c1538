package witnessmark.triplog.road;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;

/** Counts, kind by kind, what of the visible was found and what of the found was true. */
final class RoadScore {
    private static final class Count {
        int visible;
        int hit;
        int found;
        int right;
    }

    private final Map<EventKind, Count> counts = new EnumMap<>(EventKind.class);
    private final boolean show;
    int falseEvents;

    RoadScore(boolean show) {
        this.show = show;
    }

    void add(RoadDriver drive, RoadLog log, List<HabitEvent> events, String name) {
        double slack = 3 + 2 / log.hertz;
        for (RoadTruth truth : drive.truths) {
            if (log.shows(truth)) {
                Count count = counts.computeIfAbsent(truth.kind(), k -> new Count());
                count.visible++;
                boolean hit = events.stream().anyMatch(e -> matches(e, truth, log.zero(), slack));
                count.hit += hit ? 1 : 0;
                if (!hit && show) {
                    System.out.printf(Locale.ROOT, "missed %s %s%n", name, truth);
                }
            }
        }
        for (HabitEvent event : events) {
            Count count = counts.computeIfAbsent(event.kind(), k -> new Count());
            count.found++;
            boolean right = drive.truths.stream().anyMatch(t -> matches(event, t, log.zero(), slack))
                    || isEndOfFrozen(event, log, slack);
            count.right += right ? 1 : 0;
            falseEvents += right ? 0 : 1;
            if (!right && show) {
                System.out.printf(
                        Locale.ROOT,
                        "false  %s %.1f %s %s %s%n",
                        name,
                        event.startMicros() / 1e6 - log.zero(),
                        event.kind(),
                        event.confidence(),
                        event.sentence());
            }
        }
    }

    /** A speed that stood still and then goes on does jump, and it is right to say so. */
    private static boolean isEndOfFrozen(HabitEvent event, RoadLog log, double slack) {
        double at = event.startMicros() / 1e6 - log.zero();
        return event.kind() == EventKind.IMPOSSIBLE_SPEED_JUMP
                && log.frozen.filter(f -> Math.abs(f.to() - at) < slack).isPresent();
    }

    private static boolean matches(HabitEvent event, RoadTruth truth, double zero, double slack) {
        double from = event.startMicros() / 1e6 - zero;
        double to = from + event.seconds();
        return event.kind() == truth.kind() && from < truth.to() + slack && to > truth.from() - slack;
    }

    double recall(EventKind kind) {
        Count c = counts.getOrDefault(kind, new Count());
        return c.visible == 0 ? 1 : (double) c.hit / c.visible;
    }

    double precision(EventKind kind) {
        Count c = counts.getOrDefault(kind, new Count());
        return c.found == 0 ? 1 : (double) c.right / c.found;
    }

    int visible(EventKind kind) {
        return counts.getOrDefault(kind, new Count()).visible;
    }

    double recall() {
        int visible = counts.values().stream().mapToInt(c -> c.visible).sum();
        return visible == 0
                ? 1
                : counts.values().stream().mapToDouble(c -> c.hit).sum() / visible;
    }

    double precision() {
        int found = counts.values().stream().mapToInt(c -> c.found).sum();
        return found == 0
                ? 1
                : counts.values().stream().mapToDouble(c -> c.right).sum() / found;
    }

    String table() {
        StringBuilder text = new StringBuilder();
        counts.forEach((kind, c) -> text.append(String.format(
                Locale.ROOT,
                "%-30s recall %.2f (%d of %d)  precision %.2f (%d of %d)%n",
                kind.id(),
                recall(kind),
                c.hit,
                c.visible,
                precision(kind),
                c.right,
                c.found)));
        return text.append(
                        String.format(Locale.ROOT, "%-30s recall %.3f precision %.3f%n", "all", recall(), precision()))
                .toString();
    }
}
