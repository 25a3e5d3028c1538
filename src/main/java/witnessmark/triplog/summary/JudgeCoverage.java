package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import witnessmark.triplog.event.Chances;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.signal.Signal;

/** Says for each kind of event whether the log shows it, could have shown it, or cannot. */
final class JudgeCoverage {
    private static final double RATE_MARGIN = 0.8;
    private static final double LEAST_GEAR_SHARE = 0.5;
    /** In 100 km: a shorter log says nothing of what may happen on a trip. */
    private static final double LEAST_DISTANCE = 0.02;

    private final GearTable table;
    private final Chances chances;
    private final Map<Signal, Double> hertz = new EnumMap<>(Signal.class);

    /**
     * @param validCounts valid values of each signal
     * @param chances what the log held
     */
    JudgeCoverage(GearTable table, Map<Signal, Long> validCounts, Chances chances) {
        this.table = table;
        this.chances = chances;
        if (chances.coveredSeconds() > 0) {
            validCounts.forEach((signal, count) -> hertz.put(signal, count / chances.coveredSeconds()));
        }
    }

    List<Verdict> judge(Map<EventKind, Long> counts) {
        List<Verdict> verdicts = new ArrayList<>();
        for (EventKind kind : EventKind.values()) {
            verdicts.add(judge(kind, counts.getOrDefault(kind, 0L)));
        }
        return verdicts;
    }

    private Verdict judge(EventKind kind, long count) {
        double chance = chances.of(kind.chance());
        if (count > 0) {
            return new Verdict(kind, Verdict.State.SEEN, count, chance, count + (count == 1 ? " event" : " events"));
        }
        Optional<String> obstacle =
                gearbox(kind).or(() -> signals(kind)).or(() -> gears(kind)).or(() -> chance(kind, chance));
        return obstacle.isPresent()
                ? new Verdict(kind, Verdict.State.CANNOT_BE_SEEN, 0, chance, obstacle.get())
                : new Verdict(kind, Verdict.State.NOT_SEEN_THOUGH_POSSIBLE, 0, chance, basis(kind, chance));
    }

    private Optional<String> gearbox(EventKind kind) {
        return switch (kind) {
            case LOW_RANGE_ABOVE_CEILING, START_IN_HIGH_RANGE, RANGE_MOVED_IN_NEUTRAL, RANGE_MOVED_IN_REVERSE -> table
                            .hasRange()
                    ? Optional.empty()
                    : Optional.of("this gearbox has no range section");
            case OVERDRIVE_TO_LOW -> table.hasRange() && table.hasOverdriveSplit()
                    ? Optional.empty()
                    : Optional.of("this gearbox has no range with an overdrive split");
            default -> Optional.empty();
        };
    }

    private Optional<String> signals(EventKind kind) {
        for (Set<Signal> choice : kind.needs()) {
            double best = choice.stream()
                    .mapToDouble(s -> hertz.getOrDefault(s, 0.0))
                    .max()
                    .orElse(0);
            String names = choice.stream().map(Signal::words).collect(Collectors.joining(" or "));
            if (best == 0) {
                return Optional.of("the log has no " + names);
            }
            if (best < RATE_MARGIN * kind.leastHertz()) {
                return Optional.of(String.format(
                        Locale.ROOT, "%s comes %.2g times a second; %.2g are needed", names, best, kind.leastHertz()));
            }
        }
        return Optional.empty();
    }

    private Optional<String> gears(EventKind kind) {
        if (!kind.needsGear() || chances.gearKnownShare() >= LEAST_GEAR_SHARE) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "the gear cannot be told: a ratio fits in %.0f %% of the driving time; check ratios, axle and tyre",
                100 * chances.gearKnownShare()));
    }

    private static Optional<String> chance(EventKind kind, double chance) {
        double least = kind.chance() == EventKind.Chance.DISTANCE ? LEAST_DISTANCE : 1;
        return chance >= least
                ? Optional.empty()
                : Optional.of(
                        kind.chance() == EventKind.Chance.DISTANCE
                                ? "the log covers less than 2 km"
                                : "the log holds no " + kind.chance().words());
    }

    private static String basis(EventKind kind, double chance) {
        return kind.chance() == EventKind.Chance.DISTANCE
                ? String.format(Locale.ROOT, "in %.0f km", 100 * chance)
                : String.format(
                        Locale.ROOT, "in %.0f x %s", chance, kind.chance().words());
    }

    /** Rows a second of the fastest needed signal of the log; 0 if it is empty. */
    double usualHertz() {
        return Arrays.stream(Signal.values())
                .mapToDouble(s -> hertz.getOrDefault(s, 0.0))
                .max()
                .orElse(0);
    }
}
