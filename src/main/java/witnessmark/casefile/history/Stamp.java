package witnessmark.casefile.history;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import witnessmark.casefile.CheckedText;

/** Who makes an entry and when, to the millisecond. */
public record Stamp(Instant time, String who) {
    public Stamp {
        time = time.truncatedTo(ChronoUnit.MILLIS);
        who = CheckedText.filledLine("who", who);
    }
}
