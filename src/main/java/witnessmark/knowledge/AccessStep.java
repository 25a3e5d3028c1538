package witnessmark.knowledge;

import java.util.List;
import java.util.Optional;

/**
 * Where the hands must be to make a check.
 *
 * @param minutes work to open this step from the one it lies inside
 * @param inside the step that must be open before, empty for a step that starts from the standing truck
 * @param teardown whether the box or a housing is taken apart for it
 * @param needs what the truck must still do for a check in this step, empty for nothing
 * @param ends what the truck no longer does once this step is open, empty for a step that leaves it as it is
 * @param waits how long one waits for an answer without working, empty where it comes at once
 * @param onUnit whether it is work on the gearbox itself, which goes out of the truck with it
 */
public record AccessStep(
        String id,
        String title,
        double minutes,
        Optional<String> inside,
        boolean teardown,
        List<String> cautions,
        Optional<Use> needs,
        Optional<Use> ends,
        Optional<Wait> waits,
        boolean onUnit) {

    /** A use of the truck, the one that goes first first: what cannot run cannot be driven either. */
    public enum Use {
        DRIVES,
        RUNS,
        IN_TRUCK;

        /** Whether a truck that has lost this use has lost the other too. */
        public boolean endsToo(Use other) {
            return other.compareTo(this) <= 0;
        }
    }

    /** Time that passes without anybody's work. */
    public enum Wait {
        HOURS,
        DAYS,
        WEEKS
    }
}
