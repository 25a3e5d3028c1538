package witnessmark.triplog.summary;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * A stretch of time that a log covers, in microseconds since 1970, or since the log's own zero where it knows no date.
 *
 * @param fromMicros time of its first row
 * @param toMicros time of its last row, not before the first
 */
public record TimeSpan(long fromMicros, long toMicros) {
    /** A clock that shows less was never set: such times tell nothing between logs. */
    private static final long FIRST_DATE = micros(Instant.parse("2005-01-01T00:00:00Z"));

    /** Logs that follow one another may share their seam. */
    private static final double SEAM_SECONDS = 60;

    private static final double SEAM_SHARE = 0.1;

    public TimeSpan {
        if (toMicros < fromMicros) {
            throw new IllegalArgumentException("a span ends before it begins: " + fromMicros + " to " + toMicros);
        }
    }

    public static long micros(Instant time) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, time);
    }

    /** Whether its times are dates that can be held against those of another log. */
    public boolean isDated() {
        return fromMicros >= FIRST_DATE;
    }

    public Instant from() {
        return Instant.EPOCH.plus(fromMicros, ChronoUnit.MICROS);
    }

    public Instant to() {
        return Instant.EPOCH.plus(toMicros, ChronoUnit.MICROS);
    }

    public double seconds() {
        return (toMicros - fromMicros) / 1e6;
    }

    /** Seconds that both cover; 0 where either has no date. */
    public double sharedSeconds(TimeSpan other) {
        if (!isDated() || !other.isDated()) {
            return 0;
        }
        long shared = Math.min(toMicros, other.toMicros) - Math.max(fromMicros, other.fromMicros);
        return Math.max(0, shared / 1e6);
    }

    /** Whether a span of the one log covers the same driving as a span of the other. */
    public static boolean isSameDriving(List<TimeSpan> one, List<TimeSpan> other) {
        return one.stream().anyMatch(span -> other.stream().anyMatch(span::isSameDriving));
    }

    /** Whether both cover the same driving, more of it than the seam of logs that follow one another. */
    public boolean isSameDriving(TimeSpan other) {
        return sharedSeconds(other) > Math.min(SEAM_SECONDS, SEAM_SHARE * Math.min(seconds(), other.seconds()));
    }
}
