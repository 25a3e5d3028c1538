package witnessmark.interview;

import java.util.Optional;
import witnessmark.diagnosis.NextCheck;

/**
 * Why nothing more is asked.
 *
 * @param figure for a verdict that stands: the largest chance that an open check by itself would change it; else what
 *     the best open check is worth, bits
 * @param nearest the check with that figure; empty if none is open
 * @param outOfReach for a verdict that stands: the chance that no cause of its class is at work, which is as often as
 *     it could be wrong if everything were looked at; else 0
 * @param skipped how many places are left out at the technician's wish
 */
public record Ending(Reason reason, double figure, Optional<NextCheck> nearest, double outOfReach, int skipped) {

    /** What ended it. */
    public enum Reason {
        VERDICT_STANDS,
        NOTHING_TELLS,
        /** Nothing that was found points anywhere, and nothing outside is left to ask. */
        NOTHING_FOUND,
        /** Nobody could look, so often in a row that asking on would tell nothing; what would help is open. */
        NOT_KNOWN,
        /** What leads leans on answers that contradict each other; more answers would not mend that. */
        CONTRADICTED
    }
}
