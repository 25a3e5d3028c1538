package witnessmark.diagnosis;

import java.util.List;

/**
 * A check worth making next.
 *
 * @param gainBits expected information about each cause in question, summed, those far behind the leader counting less,
 *     and what it is worth besides if a conclusion waits for it; bits
 * @param chance chance that the answer is "present"
 * @param checkMinutes work of the check itself
 * @param openMinutes work to open what must still be opened for it
 * @param teardown whether something must be taken apart for it
 * @param cautions ids of the cautions that go with the steps to it and with the check itself
 */
public record NextCheck(
        String finding,
        String title,
        String ask,
        String look,
        String access,
        String accessTitle,
        double gainBits,
        double chance,
        double checkMinutes,
        double openMinutes,
        boolean teardown,
        String why,
        List<String> cautions) {

    public double minutes() {
        return checkMinutes + openMinutes;
    }
}
