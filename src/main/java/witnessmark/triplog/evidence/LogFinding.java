package witnessmark.triplog.evidence;

import java.util.Optional;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;

/**
 * Which events speak for which finding, and how often they come, per chance (100 km for distance): a row of the knowledge
 * base's {@code log-findings.yaml}.
 *
 * @param id of the finding
 * @param kind of the events
 * @param habitRate on a truck that has the habit or fault
 * @param strayRate on one that has not
 * @param isHabit whether only doing it again and again makes it what the finding says; a tow or a runaway happens once
 * @param only what an event must be to be meant; empty if each of the kind is
 * @param proof what an event must show to count for the finding; one that does not leaves it open
 * @param alsoAfter the kind that an event may follow from and still speak for the finding: both say of one act what it was,
 *     and the knowledge base counts them once; empty if what follows from another event is that one's witness alone
 */
record LogFinding(
        String id,
        EventKind kind,
        double habitRate,
        double strayRate,
        boolean isHabit,
        Optional<EventCondition> only,
        Optional<EventCondition> proof,
        Optional<EventKind> alsoAfter) {

    /** What an event of a finding's kind says of the finding. */
    enum Fit {
        SPEAKS_FOR,
        /** It says something else. */
        NOT_MEANT,
        /** It may be one, but something else explains it, or another finding has it already. */
        OPEN
    }

    LogFinding {
        if (!(strayRate > 0 && habitRate > strayRate)) {
            throw new IllegalArgumentException(
                    id + ": rates " + habitRate + " with and " + strayRate + " without must be above 0 and fall");
        }
    }

    /** What the event, of this finding's kind, says of it. What follows from another event is that one's witness. */
    Fit fit(HabitEvent event, GearTable table) {
        boolean meant = only.map(test -> test.passes(event, table)).orElse(true);
        boolean proven = proof.map(test -> test.passes(event, table)).orElse(true);
        boolean itsOwn =
                event.act().follows().isEmpty() || event.act().follows().equals(alsoAfter);
        if (!proven || !itsOwn && meant) {
            return Fit.OPEN;
        }
        return meant ? Fit.SPEAKS_FOR : Fit.NOT_MEANT;
    }
}
