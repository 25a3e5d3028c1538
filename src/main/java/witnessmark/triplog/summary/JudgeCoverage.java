package witnessmark.triplog.summary;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.triplog.event.Chances;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.signal.Signal;

/** Says for each kind of event why one log cannot show it, if it cannot. */
final class JudgeCoverage {
    private static final double RATE_MARGIN = 0.8;
    private static final double LEAST_GEAR_SHARE = 0.5;

    private final GearTable table;
    private final Chances chances;
    private final Map<Signal, Long> validCounts;
    private final Map<Signal, Double> hertz = new EnumMap<>(Signal.class);

    /**
     * @param validCounts valid values of each signal
     * @param chances what the log held
     */
    JudgeCoverage(GearTable table, Map<Signal, Long> validCounts, Chances chances) {
        this.table = table;
        this.chances = chances;
        this.validCounts = validCounts;
        if (chances.coveredSeconds() > 0) {
            validCounts.forEach((signal, count) -> hertz.put(signal, count / chances.coveredSeconds()));
        }
    }

    /** Why this log cannot show the kind, however long it were; empty if it can. */
    Optional<String> obstacle(EventKind kind) {
        return gearbox(kind).or(() -> signals(kind)).or(() -> pace(kind)).or(() -> gears(kind));
    }

    private Optional<String> gearbox(EventKind kind) {
        return switch (kind) {
            case LOW_RANGE_ABOVE_CEILING, START_IN_HIGH_RANGE, RANGE_MOVED_IN_NEUTRAL, RANGE_MOVED_IN_REVERSE -> table
                            .hasRange()
                    ? Optional.empty()
                    : Optional.of("this gearbox has no range section");
            case OVERDRIVE_TO_LOW -> !table.hasRange()
                    ? Optional.of("this gearbox has no range section")
                    : table.hasOverdrive() ? Optional.empty() : Optional.of("this gearbox has no overdrive");
            case SPLIT_UNDER_TORQUE -> table.splitterRatio().isPresent()
                    ? Optional.empty()
                    : Optional.of("this gearbox has no splitter");
            default -> Optional.empty();
        };
    }

    private Optional<String> signals(EventKind kind) {
        for (Set<Signal> choice : kind.needs()) {
            double best = choice.stream()
                    .mapToDouble(s -> hertz.getOrDefault(s, 0.0))
                    .max()
                    .orElse(0);
            Optional<String> doubt = doubt(choice);
            if (doubt.isPresent()) {
                return doubt;
            }
            String names = choice.stream().map(Signal::words).collect(Collectors.joining(" or "));
            if (best == 0) {
                boolean lone = choice.stream().anyMatch(s -> validCounts.getOrDefault(s, 0L) > 0);
                return Optional.of(lone ? "the log's rows cover no time" : "the log has no " + names);
            }
            double least = kind.leastHertz(isPedalKnown());
            if (best < RATE_MARGIN * least) {
                return Optional.of(names + " comes " + HowOften.of(best) + "; " + HowOften.needed(least)
                        + (least > kind.leastHertz() ? " without a clutch signal" : ""));
            }
        }
        return Optional.empty();
    }

    /** A road speed that stands for several rows and then leaps, as one from satellites does. */
    private Optional<String> pace(EventKind kind) {
        double seconds = chances.paceSeconds();
        double least = kind.leastHertz();
        return kind.needsRatioAtOnce() && seconds > 0 && RATE_MARGIN * least * seconds > 1
                ? Optional.of("a new road speed comes only " + HowOften.of(1 / seconds) + ", as by satellite; "
                        + HowOften.needed(least))
                : Optional.empty();
    }

    private boolean isPedalKnown() {
        return Stream.of(Signal.CLUTCH, Signal.CLUTCH_PEDAL)
                .anyMatch(s -> hertz.getOrDefault(s, 0.0) >= RATE_MARGIN
                        && !chances.doubts().containsKey(s));
    }

    /** Why none of the signals that the log has of these is believed; empty if one is. */
    private Optional<String> doubt(Set<Signal> choice) {
        List<Signal> given =
                choice.stream().filter(s -> hertz.getOrDefault(s, 0.0) > 0).toList();
        Map<Signal, String> doubts = chances.doubts();
        if (given.isEmpty() || !doubts.keySet().containsAll(given)) {
            return Optional.empty();
        }
        return Optional.of("the log's " + given.get(0).words() + " " + doubts.get(given.get(0)));
    }

    private Optional<String> gears(EventKind kind) {
        if (kind.needsGear() && chances.gearDoubt().isPresent()) {
            return chances.gearDoubt();
        }
        if (!kind.needsGear() || chances.gearKnownShare() >= LEAST_GEAR_SHARE) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "the gear cannot be told: a ratio fits in %.0f %% of the driving time; check ratios, axle and tyre",
                100 * chances.gearKnownShare()));
    }
}
