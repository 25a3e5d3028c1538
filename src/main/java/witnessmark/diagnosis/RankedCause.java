package witnessmark.diagnosis;

import java.util.List;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.fact.HoldReason;

/**
 * A cause with its probability and what speaks for and against it.
 *
 * @param seen whether the state that it is was looked at or measured and found so
 * @param evidenceFor findings that raise it, strongest first
 * @param evidenceAgainst findings that lower it, strongest first
 * @param unchecked ids of findings it should show that were not looked at, most expected first
 * @param reasons why it may not be concluded; empty if nothing holds it back
 * @param heldBack the same in words
 */
public record RankedCause(
        String id,
        String title,
        String classId,
        double probability,
        Standing standing,
        boolean seen,
        List<Weight> evidenceFor,
        List<Weight> evidenceAgainst,
        List<String> unchecked,
        List<Rivalry> lookAlikes,
        List<HoldReason> reasons,
        List<String> heldBack) {

    /** The shortest list of open looks that would let it be concluded: for each reason the first that would do. */
    public List<String> demands() {
        return reasons.stream()
                .flatMap(reason -> reason.firstLook().stream())
                .distinct()
                .toList();
    }

    /** How far a cause may be spoken of. */
    public enum Standing {
        /** Probable enough, and nothing holds it back. */
        CONCLUDED,
        /** Probable, but something holds the conclusion back. */
        HELD_BACK,
        /** More likely than not, but not probable enough to conclude. */
        LIKELY,
        /** Worth keeping in mind. */
        POSSIBLE,
        /** Not supported by what was found. */
        UNLIKELY
    }

    /**
     * Change of the log-odds of the cause when this finding alone is left out of the evidence.
     *
     * @param decibans ten times the decimal logarithm of the odds ratio; positive speaks for the cause
     */
    public record Weight(String finding, String title, FindingState state, double decibans) {}

    /** A look-alike with its own probability and what tells the two apart. */
    public record Rivalry(String cause, String title, double probability, String tells, List<String> openChecks) {}
}
