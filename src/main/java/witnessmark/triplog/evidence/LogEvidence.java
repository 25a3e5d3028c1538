package witnessmark.triplog.evidence;

import java.util.Optional;
import witnessmark.triplog.event.EventKind;

/**
 * A finding that logs support or deny.
 *
 * @param finding id of the finding
 * @param state what the logs say
 * @param ifPresent chance of what the logs show if the finding is true of the truck
 * @param ifAbsent chance of what the logs show if it is not; only the two together mean anything
 * @param counted what was counted for it
 * @param chance when it could have happened
 * @param count events it rests on
 * @param chances how often it could have happened (100 km for distance)
 * @param sentence for a person, with counts and coverage
 * @param thin why it is not enough to rest a conclusion on, though it weighs; empty where nothing is against that
 */
public record LogEvidence(
        String finding,
        State state,
        double ifPresent,
        double ifAbsent,
        Counted counted,
        EventKind.Chance chance,
        long count,
        double chances,
        String sentence,
        Optional<Thin> thin) {

    /** From this many times likelier, one way or the other, it counts. */
    private static final double SAYS_SOMETHING = 3;

    /** What was counted for a finding. */
    public enum Counted {
        EVENTS,
        /** The long rolls out of gear, and how far they went together. */
        COASTS,
        /** In how much of the driving a ratio fits, and how often the speed jumps. */
        FIT
    }

    /** What logs can say of a finding. Logs that cannot show it make no evidence at all. */
    public enum State {
        PRESENT,
        ABSENT,
        /** Too little either way, or too thin to rest a conclusion on. */
        UNSURE
    }

    public LogEvidence {
        if (!(ifPresent > 0 && ifPresent <= 1 && ifAbsent > 0 && ifAbsent <= 1)) {
            throw new IllegalArgumentException(
                    finding + ": chances " + ifPresent + " and " + ifAbsent + " must be above 0 and at most 1");
        }
    }

    /** How many times likelier the logs are with the finding than without. */
    public double factor() {
        return ifPresent / ifAbsent;
    }

    /** Whether it speaks clearly enough for or against the finding to enter a judgement. */
    public boolean counts() {
        return speaksFor() || speaksAgainst();
    }

    public boolean speaksFor() {
        return factor() >= SAYS_SOMETHING * (1 - 1e-12);
    }

    public boolean speaksAgainst() {
        return factor() <= (1 + 1e-12) / SAYS_SOMETHING;
    }
}
