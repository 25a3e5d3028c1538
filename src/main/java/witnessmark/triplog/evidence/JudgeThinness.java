package witnessmark.triplog.evidence;

import java.util.Locale;
import java.util.Optional;
import witnessmark.triplog.evidence.LogRecord.Tally;

/**
 * Whether what logs show is enough to rest a conclusion on. Weight alone is not: one odd shift in five minutes outweighs
 * chance by far, and is still no habit. The limits are judgement in the spirit of common practice; no source states them.
 */
final class JudgeThinness {
    /** A habit shows more than once; one event of full confidence and a doubtful one are not two. */
    private static final double REPEATED = 1.5;

    private static final double ONCE = 0.8;
    private static final double LEAST_HOURS = 0.5;
    private static final double GEARS_FIT = 0.7;

    private JudgeThinness() {}

    /** Why not, in words that go on from "too thin to rest a conclusion on: "; empty where it is enough. */
    static Optional<String> of(LogRecord record, LogFinding finding, Tally tally) {
        if (!record.doubts().isEmpty()) {
            return of(record);
        }
        if (finding.kind().needsGear() && record.gearShare() < GEARS_FIT) {
            return Optional.of(String.format(
                    Locale.ROOT, "a ratio fits in only %.0f %% of the driving time", 100 * record.gearShare()));
        }
        if (!finding.isHabit()) {
            return tally.weight() < ONCE ? Optional.of("the one event is not sure") : Optional.empty();
        }
        if (tally.weight() < REPEATED) {
            return Optional.of("seen once; a habit shows again");
        }
        return record.coveredHours() < LEAST_HOURS
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "the logs cover %.0f min; add logs of more trips",
                        Math.floor(60 * record.coveredHours())))
                : Optional.empty();
    }

    /** The same for what is no count of events. */
    static Optional<String> of(LogRecord record) {
        return record.doubts().isEmpty()
                ? Optional.empty()
                : Optional.of("a log among them may be of another truck or time");
    }
}
