package witnessmark.knowledge;

import java.util.List;
import java.util.Optional;

/**
 * Where the hands must be to make a check.
 *
 * @param minutes work to open this step from the one it lies inside
 * @param inside the step that must be open before, empty for a step that starts from the standing truck
 * @param teardown whether the box or a housing is taken apart for it
 * @param waits how long one waits for an answer without working, empty where it comes at once
 */
public record AccessStep(
        String id,
        String title,
        double minutes,
        Optional<String> inside,
        boolean teardown,
        List<String> cautions,
        Optional<Wait> waits) {

    /** Time that passes without anybody's work. */
    public enum Wait {
        HOURS,
        DAYS,
        WEEKS
    }
}
