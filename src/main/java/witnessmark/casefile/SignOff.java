package witnessmark.casefile;

import java.time.Instant;

/** Who closed the case to change, and when. */
public record SignOff(String who, Instant time) {}
