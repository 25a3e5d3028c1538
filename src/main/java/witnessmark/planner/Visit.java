package witnessmark.planner;

import java.util.List;

/**
 * One going to a place, with the checks that are worth making there and on the way, first to be made first.
 *
 * @param place id of the access step
 * @param opening ids of the steps that must be opened for it, outermost first; empty where it is open
 * @param openMinutes work to open them, paid once
 * @param checkMinutes work of the checks
 * @param bits what the checks are worth together: never more than what is in doubt
 */
public record Visit(
        String place, List<String> opening, double openMinutes, List<Check> checks, double checkMinutes, double bits) {
    public Visit {
        opening = List.copyOf(opening);
        checks = List.copyOf(checks);
    }

    public double minutes() {
        return openMinutes + checkMinutes;
    }

    /** Bits for each minute of work. */
    public double rate() {
        return bits / (PlanChecks.ASKING_MINUTES * checks.size() + minutes());
    }
}
