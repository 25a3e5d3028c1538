package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.triplog.event.Chances;
import witnessmark.triplog.event.EventKind;

/**
 * How much of one log, or of several of one truck, could have shown each kind of event. A log that cannot show a kind
 * adds nothing to it: neither chances nor distance.
 */
final class EventCoverage {
    private final Map<EventKind, Double> chances = new EnumMap<>(EventKind.class);
    /** Those of the logs that cannot show the kind too: what counts where it showed against expectation. */
    private final Map<EventKind, Double> heldAnyway = new EnumMap<>(EventKind.class);

    private final Map<EventKind, Double> km = new EnumMap<>(EventKind.class);
    private final Map<EventKind, String> obstacles = new EnumMap<>(EventKind.class);

    void add(JudgeCoverage log, Chances held) {
        for (EventKind kind : EventKind.values()) {
            heldAnyway.merge(kind, held.of(kind.chance()), Double::sum);
            Optional<String> obstacle = log.obstacle(kind);
            if (obstacle.isPresent()) {
                obstacles.putIfAbsent(kind, obstacle.get());
            } else {
                chances.merge(kind, held.of(kind.chance()), Double::sum);
                km.merge(kind, held.km(), Double::sum);
            }
        }
    }

    void add(EventCoverage other) {
        other.heldAnyway.forEach((kind, count) -> heldAnyway.merge(kind, count, Double::sum));
        other.obstacles.forEach(obstacles::putIfAbsent);
        other.chances.forEach((kind, count) -> chances.merge(kind, count, Double::sum));
        other.km.forEach((kind, distance) -> km.merge(kind, distance, Double::sum));
    }

    /** Distance of the logs that could have shown the kind; 0 if none could. */
    double km(EventKind kind) {
        return km.getOrDefault(kind, 0.0);
    }

    List<LogVerdict> judge(Map<EventKind, Long> counts) {
        List<LogVerdict> verdicts = new ArrayList<>();
        for (EventKind kind : EventKind.values()) {
            verdicts.add(judge(kind, counts.getOrDefault(kind, 0L)));
        }
        return verdicts;
    }

    private LogVerdict judge(EventKind kind, long count) {
        double chance = chances.getOrDefault(kind, 0.0);
        if (count > 0) {
            double of = chance > 0 ? chance : heldAnyway.getOrDefault(kind, 0.0);
            return new LogVerdict(kind, LogVerdict.State.SEEN, count, of, count + (count == 1 ? " event" : " events"));
        }
        if (!chances.containsKey(kind)) {
            return new LogVerdict(
                    kind, LogVerdict.State.CANNOT_BE_SEEN, 0, 0, obstacles.getOrDefault(kind, "no log was read"));
        }
        return noChance(kind, chance)
                .map(reason -> new LogVerdict(kind, LogVerdict.State.CANNOT_BE_SEEN, 0, chance, reason))
                .orElseGet(() -> new LogVerdict(
                        kind,
                        LogVerdict.State.NOT_SEEN_THOUGH_POSSIBLE,
                        0,
                        chance,
                        "in " + kind.chance().words(chance)));
    }

    private static Optional<String> noChance(EventKind kind, double chance) {
        if (kind.chance().isEnough(chance)) {
            return Optional.empty();
        }
        return Optional.of(
                kind.chance() == EventKind.Chance.DISTANCE
                        ? "the log covers less than 2 km"
                        : "the log holds no " + kind.chance().words());
    }
}
