package witnessmark.triplog.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.evidence.LogEvidence.State;
import witnessmark.triplog.evidence.LogFindings.OfTheWhole;
import witnessmark.triplog.evidence.LogRecord.Tally;

/**
 * Weighs counts against what a habit, and its absence, would have brought. With a mean rate m per chance, any true rate
 * scattered exponentially about it, x events in E chances have the chance (1/(1+mE)) (mE/(1+mE))^x. So a short log says
 * little, a long one without events speaks against the habit, and the log that cannot show the thing is left out. All
 * logs of a truck share its one true rate: their counts and chances are added, and weighed once.
 */
public final class WeighRecord {
    /** However many events: a log is one witness, and it names a truck, not who drove. */
    private static final double STRONGEST_FOR = 100;

    private static final double STRONGEST_AGAINST = 20;
    /** An event is a chance too, even where the chance itself was not counted. */
    private static final double LEAST_CHANCES_PER_EVENT = 0.01;

    private static final double FOUND_SHARE = 0.95;
    private static final double LARGER = 0.95;
    private static final double GEARS_FIT = 0.7;
    private static final double GEARS_DO_NOT_FIT = 0.3;
    private static final double LEAST_MOVING_HOURS = 0.1;
    private static final double LEAST_TELLING_HOURS = 0.02;
    private static final double FEW_JUMPS_PER_100 = 1;
    private static final double MANY_JUMPS_PER_100 = 5;
    private static final double LONG_COAST_KM_PER_100 = 1;
    private static final double HARDLY_ANY_COAST_KM_PER_100 = 0.1;
    private static final int SEVERAL_COASTS = 3;
    private static final double COAST_CHANCES = 1;

    private final LogFindings findings = LogFindings.shipped();
    private final LogRecord record;

    private WeighRecord(LogRecord record) {
        this.record = record;
    }

    /** The findings that the logs support or deny; none for what they cannot show. */
    public static List<LogEvidence> weigh(LogRecord record) {
        return new WeighRecord(record).weigh();
    }

    private List<LogEvidence> weigh() {
        List<LogEvidence> evidence = new ArrayList<>();
        for (LogFinding finding : findings.rows()) {
            Tally tally = record.tallies().get(finding.id());
            if (tally != null && says(finding, tally)) {
                evidence.add(weigh(finding, tally));
            }
        }
        if (record.movingHours() >= LEAST_MOVING_HOURS && record.tellingHours() >= LEAST_TELLING_HOURS) {
            fit(evidence);
        }
        longCoasts().ifPresent(evidence::add);
        return List.copyOf(evidence);
    }

    /** Where all that was found is open, it neither speaks for the finding nor may be held against it. */
    private static boolean says(LogFinding finding, Tally tally) {
        return tally.count() > 0 || tally.open() == 0 && finding.kind().chance().isEnough(tally.chances());
    }

    private LogEvidence weigh(LogFinding finding, Tally counted) {
        double least = LEAST_CHANCES_PER_EVENT * Math.max(counted.count(), counted.weight());
        Tally tally = new Tally(counted.count(), counted.weight(), Math.max(counted.chances(), least));
        double habit = logChance(tally.weight(), FOUND_SHARE * finding.habitRate() * tally.chances());
        double stray = logChance(tally.weight(), finding.strayRate() * tally.chances());
        String sentence = String.format(
                Locale.ROOT,
                "%d x %s in %s",
                tally.count(),
                finding.kind().words(),
                finding.kind().chance().words(tally.chances()));
        return evidence(
                finding.id(),
                Math.exp(habit - stray),
                tally,
                new Seen(LogEvidence.Counted.EVENTS, finding.kind().chance(), sentence),
                JudgeThinness.of(record, finding, tally));
    }

    private static double logChance(double events, double mean) {
        double none = -Math.log1p(mean);
        return events == 0 ? none : none + events * Math.log(mean / (1 + mean));
    }

    /** What was counted, when it could have happened, and both in a sentence. */
    private record Seen(LogEvidence.Counted counted, EventKind.Chance chance, String sentence) {}

    /** Thinness takes the weight of nothing; it only says that no conclusion may rest on it. */
    private static LogEvidence evidence(String finding, double rawFactor, Tally tally, Seen seen, Optional<Thin> thin) {
        double factor = Math.max(1 / STRONGEST_AGAINST, Math.min(STRONGEST_FOR, rawFactor));
        LogEvidence plain = new LogEvidence(
                finding,
                State.UNSURE,
                factor >= 1 ? LARGER : LARGER * factor,
                factor >= 1 ? LARGER / factor : LARGER,
                seen.counted(),
                seen.chance(),
                tally.count(),
                tally.chances(),
                seen.sentence(),
                thin);
        State state = plain.speaksFor() ? State.PRESENT : plain.speaksAgainst() ? State.ABSENT : State.UNSURE;
        return new LogEvidence(
                finding,
                thin.isPresent() && plain.speaksFor() ? State.UNSURE : state,
                plain.ifPresent(),
                plain.ifAbsent(),
                seen.counted(),
                seen.chance(),
                tally.count(),
                tally.chances(),
                seen.sentence(),
                plain.speaksFor() ? thin : Optional.empty());
    }

    /** Whether the ratios fit this truck at all, and the speed data can be believed. */
    private void fit(List<LogEvidence> evidence) {
        double share = record.gearShare();
        double hundreds = record.km() / 100;
        Tally seen = record.tallies()
                .get(findings.of(EventKind.IMPOSSIBLE_SPEED_JUMP).id());
        long jumps = seen == null ? 0 : seen.count();
        OfTheWhole noGear = findings.ratioFitsNoGear();
        double misfit = share < GEARS_DO_NOT_FIT ? noGear.timesFor() : share < GEARS_FIT ? 1 : noGear.against();
        String words = String.format(
                Locale.ROOT,
                "a ratio of this gearbox fits in %.0f %% of the driving time, %d speed jumps in %.0f km",
                100 * share,
                jumps,
                record.km());
        Seen fit = new Seen(LogEvidence.Counted.FIT, EventKind.Chance.DISTANCE, words);
        evidence.add(evidence(noGear.id(), misfit, new Tally(0, 0, hundreds), fit, JudgeThinness.of(record)));
        double jumpsPer100 = jumps / Math.max(1, hundreds);
        OfTheWhole believable = findings.speedDataBelievable();
        boolean good = share >= GEARS_FIT && jumpsPer100 < FEW_JUMPS_PER_100;
        boolean bad = share < GEARS_DO_NOT_FIT || jumpsPer100 > MANY_JUMPS_PER_100;
        double sound = good ? believable.timesFor() : bad ? believable.against() : 1;
        evidence.add(
                evidence(believable.id(), sound, new Tally(jumps, jumps, hundreds), fit, JudgeThinness.of(record)));
    }

    private Optional<LogEvidence> longCoasts() {
        LogFinding rolling = findings.of(EventKind.COAST_IN_NEUTRAL);
        Tally coasts = record.tallies().get(rolling.id());
        if (coasts == null) {
            return Optional.empty();
        }
        double per100 = coasts.chances() > 0 ? record.coastKm() / coasts.chances() : 0;
        boolean repeated = coasts.count() >= SEVERAL_COASTS && per100 >= LONG_COAST_KM_PER_100;
        boolean none = per100 < HARDLY_ANY_COAST_KM_PER_100 && coasts.chances() >= COAST_CHANCES;
        OfTheWhole far = findings.coastDistanceLong();
        double factor = repeated ? far.timesFor() : none ? far.against() : 1;
        return Optional.of(evidence(
                far.id(),
                factor,
                coasts,
                new Seen(
                        LogEvidence.Counted.COASTS,
                        EventKind.Chance.DISTANCE,
                        String.format(
                                Locale.ROOT,
                                "%d coasts of %.1f km together in %.0f km",
                                coasts.count(),
                                record.coastKm(),
                                100 * coasts.chances())),
                JudgeThinness.of(record, rolling, coasts)));
    }
}
