package witnessmark.triplog.summary;

import java.time.Instant;
import java.util.Locale;

/** The moments of a log in words. */
public final class LogMoment {
    private static final long YEAR_2000_MICROS = 946_684_800_000_000L;

    private LogMoment() {}

    /** A date and time in UTC if the log knows the date, else hours, minutes and seconds of the log. */
    public static String words(long micros) {
        if (micros > YEAR_2000_MICROS) {
            return Instant.ofEpochSecond(0, Math.floorDiv(micros, 100_000) * 100_000_000L)
                    .toString();
        }
        double seconds = micros / 1e6;
        return String.format(
                Locale.ROOT, "%d:%02d:%04.1f", (long) seconds / 3600, (long) seconds / 60 % 60, seconds % 60);
    }
}
