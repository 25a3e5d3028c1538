package witnessmark.triplog.evidence;

import java.util.List;

/**
 * A finding that a log supports or denies.
 *
 * @param finding id of the finding
 * @param state what the log says
 * @param ifPresent chance of what the log shows if the finding is true of the truck
 * @param ifAbsent chance of what the log shows if it is not; only the two together mean anything
 * @param count events it rests on
 * @param chances how often it could have happened (100 km for distance)
 * @param sentence for a person, with counts and coverage
 * @param fileHashes SHA-256 of the logs it rests on
 */
public record LogEvidence(
        String finding,
        State state,
        double ifPresent,
        double ifAbsent,
        long count,
        double chances,
        String sentence,
        List<String> fileHashes) {

    /** What a log can say of a finding. A log that cannot show it makes no evidence at all. */
    public enum State {
        PRESENT,
        ABSENT,
        UNSURE
    }

    public LogEvidence {
        if (!(ifPresent > 0 && ifPresent <= 1 && ifAbsent > 0 && ifAbsent <= 1)) {
            throw new IllegalArgumentException(
                    finding + ": chances " + ifPresent + " and " + ifAbsent + " must be above 0 and at most 1");
        }
        fileHashes = List.copyOf(fileHashes);
    }

    /** How many times likelier the log is with the finding than without. */
    public double factor() {
        return ifPresent / ifAbsent;
    }
}
