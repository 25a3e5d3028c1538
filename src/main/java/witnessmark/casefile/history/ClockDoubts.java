package witnessmark.casefile.history;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Entries whose times cannot all be true: they are kept as they are, and said. */
public final class ClockDoubts {
    /** Clocks of two computers may differ by so much without a word. */
    private static final Duration USUAL = Duration.ofMinutes(5);

    private ClockDoubts() {}

    /** A sentence for each entry dated before the one it follows, or after the present; none if all fit. */
    public static List<String> of(CaseHistory history) {
        return of(history, Clock.systemUTC());
    }

    static List<String> of(CaseHistory history, Clock clock) {
        List<String> doubts = new ArrayList<>();
        Instant latest = Instant.MIN;
        for (Entry entry : history.entries()) {
            Instant time = entry.stamp().time();
            if (time.plus(USUAL).isBefore(latest)) {
                doubts.add("Entry " + entry.number() + " is dated " + CanonicalText.of(time)
                        + ", before an entry it follows: a clock was set back.");
            } else if (time.minus(USUAL).isAfter(clock.instant())) {
                doubts.add("Entry " + entry.number() + " is dated " + CanonicalText.of(time)
                        + ", after the present: a clock is or was ahead.");
            }
            latest = time.isAfter(latest) ? time : latest;
        }
        return doubts;
    }
}
