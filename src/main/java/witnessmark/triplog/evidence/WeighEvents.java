package witnessmark.triplog.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.summary.TripSummary;
import witnessmark.triplog.summary.Verdict;

/**
 * Weighs counts against what a habit, and its absence, would have brought. With a mean rate m per chance, any true rate
 * scattered exponentially about it, x events in E chances have the chance (1/(1+mE)) (mE/(1+mE))^x. So a short log says
 * little, a long one without events speaks against the habit, and the log that cannot show the thing is left out.
 */
public final class WeighEvents {
    /** However many events: a log is one witness, and it names a truck, not who drove. */
    private static final double STRONGEST_FOR = 100;

    private static final double STRONGEST_AGAINST = 20;
    private static final double FOUND_SHARE = 0.95;
    private static final double LARGER = 0.95;
    private static final double SAYS_SOMETHING = 3;
    private static final double GEARS_FIT = 0.7;
    private static final double GEARS_DO_NOT_FIT = 0.3;
    private static final double LONG_COAST_KM_PER_100 = 1;

    private final TripSummary summary;
    private final List<HabitEvent> events;
    private final GearTable table;
    private final List<String> hashes;

    private WeighEvents(TripSummary summary, List<HabitEvent> events, GearTable table, List<String> hashes) {
        this.summary = summary;
        this.events = events;
        this.table = table;
        this.hashes = hashes;
    }

    /**
     * The findings that the logs support or deny; none for what they cannot show.
     *
     * @param summary over all the logs
     * @param events of all the logs
     * @param hashes of their files
     */
    public static List<LogEvidence> weigh(
            TripSummary summary, List<HabitEvent> events, GearTable table, List<String> hashes) {
        return new WeighEvents(summary, events, table, hashes).weigh();
    }

    private List<LogEvidence> weigh() {
        List<LogEvidence> evidence = new ArrayList<>();
        for (LogFinding finding : LogFinding.values()) {
            Verdict verdict = summary.verdict(finding.kind());
            if (verdict.state() != Verdict.State.CANNOT_BE_SEEN) {
                evidence.add(weigh(finding, verdict));
            }
        }
        fit(evidence);
        longCoasts(evidence);
        return List.copyOf(evidence);
    }

    private LogEvidence weigh(LogFinding finding, Verdict verdict) {
        List<HabitEvent> fitting = events.stream()
                .filter(e -> e.kind() == finding.kind() && finding.covers(e, table))
                .toList();
        double weight = fitting.stream().mapToDouble(HabitEvent::confidence).sum();
        // An event is a chance too, even where the chance itself was not counted.
        double chances = Math.max(verdict.chances(), fitting.size() * 0.01);
        double habit = logChance(weight, FOUND_SHARE * finding.habitRate() * chances);
        double stray = logChance(weight, finding.strayRate() * chances);
        double factor = Math.exp(habit - stray);
        String sentence = String.format(
                Locale.ROOT,
                "%d x %s in %s",
                fitting.size(),
                finding.kind().words(),
                finding.kind().chance().words(chances));
        return evidence(finding.id(), factor, fitting.size(), chances, sentence);
    }

    private static double logChance(double events, double mean) {
        double none = -Math.log1p(mean);
        return events == 0 ? none : none + events * Math.log(mean / (1 + mean));
    }

    private LogEvidence evidence(String finding, double rawFactor, long count, double chances, String sentence) {
        double factor = Math.max(1 / STRONGEST_AGAINST, Math.min(STRONGEST_FOR, rawFactor));
        LogEvidence.State state = factor >= SAYS_SOMETHING
                ? LogEvidence.State.PRESENT
                : factor <= 1 / SAYS_SOMETHING ? LogEvidence.State.ABSENT : LogEvidence.State.UNSURE;
        double present = factor >= 1 ? LARGER : LARGER * factor;
        double absent = factor >= 1 ? LARGER / factor : LARGER;
        return new LogEvidence(finding, state, present, absent, count, chances, sentence, hashes);
    }

    /** Whether the ratios fit this truck at all, and the speed data can be believed. */
    private void fit(List<LogEvidence> evidence) {
        double share = summary.gearKnownShare();
        if (summary.movingHours() < 0.1 || share == 0 && summary.shifts() == 0 && summary.km() < 2) {
            return;
        }
        long jumps = summary.eventCounts().getOrDefault(EventKind.IMPOSSIBLE_SPEED_JUMP, 0L);
        double misfit = share < GEARS_DO_NOT_FIT ? 20 : share < GEARS_FIT ? 1 : 0.1;
        String words = String.format(
                Locale.ROOT,
                "a ratio of this gearbox fits in %.0f %% of the driving time, %d speed jumps in %.0f km",
                100 * share,
                jumps,
                summary.km());
        evidence.add(evidence("log-ratio-fits-no-gear", misfit, 0, summary.km() / 100, words));
        double jumpsPer100 = jumps / Math.max(1, summary.km() / 100);
        double sound =
                share >= GEARS_FIT && jumpsPer100 < 1 ? 10 : share < GEARS_DO_NOT_FIT || jumpsPer100 > 5 ? 0.1 : 1;
        evidence.add(evidence("log-speed-data-believable", sound, jumps, summary.km() / 100, words));
    }

    private void longCoasts(List<LogEvidence> evidence) {
        Verdict verdict = summary.verdict(EventKind.COAST_IN_NEUTRAL);
        if (verdict.state() == Verdict.State.CANNOT_BE_SEEN) {
            return;
        }
        List<HabitEvent> coasts =
                events.stream().filter(e -> e.kind() == verdict.kind()).toList();
        double km = coasts.stream()
                .mapToDouble(e -> e.figures().getOrDefault("distance-km", 0.0))
                .sum();
        double per100 = summary.km() > 0 ? 100 * km / summary.km() : 0;
        boolean repeated = coasts.size() >= 3 && per100 >= LONG_COAST_KM_PER_100;
        double factor = repeated ? 15 : per100 < 0.1 && summary.km() >= 100 ? 0.1 : 1;
        evidence.add(evidence(
                "log-coast-distance-long",
                factor,
                coasts.size(),
                summary.km() / 100,
                String.format(
                        Locale.ROOT, "%d coasts of %.1f km together in %.0f km", coasts.size(), km, summary.km())));
    }
}
