package witnessmark.diagnosis;

import java.util.List;

/**
 * One going to a place with the checks worth making there and on the way, in the order to make them.
 *
 * @param access id of the access step
 * @param openMinutes work to open what is not open yet, paid once
 * @param minutes work of opening and checks together
 * @param gainBits what the checks are worth together: never more than is in doubt
 */
public record NextVisit(
        String access, String title, double openMinutes, double minutes, double gainBits, List<NextCheck> checks) {}
