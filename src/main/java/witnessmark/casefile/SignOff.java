package witnessmark.casefile;

import java.time.Instant;
import java.util.Optional;

/**
 * Who closed the case to change, when, and on what judgement.
 *
 * @param judgement what was signed; empty for cases signed off before the judgement was kept
 */
public record SignOff(String who, Instant time, Optional<SignedJudgement> judgement) {
    public SignOff(String who, Instant time) {
        this(who, time, Optional.empty());
    }
}
