package witnessmark.triplog.evidence;

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

    /** Why not; empty where it is enough. */
    static Optional<Thin> of(LogRecord record, LogFinding finding, Tally tally) {
        if (!record.doubts().isEmpty()) {
            return of(record);
        }
        if (finding.kind().needsGear() && record.gearShare() < GEARS_FIT) {
            return Optional.of(new Thin(Thin.Reason.RATIO_SELDOM_FITS, 100 * record.gearShare()));
        }
        if (!finding.isHabit()) {
            return tally.weight() < ONCE ? Optional.of(Thin.of(Thin.Reason.EVENT_NOT_SURE)) : Optional.empty();
        }
        if (tally.weight() < REPEATED) {
            return Optional.of(Thin.of(Thin.Reason.SEEN_ONCE));
        }
        return record.coveredHours() < LEAST_HOURS
                ? Optional.of(new Thin(Thin.Reason.SHORT, Math.floor(60 * record.coveredHours())))
                : Optional.empty();
    }

    /** The same for what is no count of events. */
    static Optional<Thin> of(LogRecord record) {
        return record.doubts().isEmpty() ? Optional.empty() : Optional.of(Thin.of(Thin.Reason.DOUBTED));
    }
}
