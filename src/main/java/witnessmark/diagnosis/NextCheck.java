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
 * @param bearing what it is made for
 * @param cause id of the cause in question that it would move most; the first in question where it moves none
 * @param why the same in a sentence, with figures
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
        Bearing bearing,
        String cause,
        String why,
        List<String> cautions) {

    /** What a check is made for. */
    public enum Bearing {
        /** A conclusion is set against what looks like it, or waits for it. */
        CONCLUSION,
        /** It comes from another source than a finding on record that says the same. */
        SECOND_SOURCE,
        /** It moves a cause that is in question. */
        CAUSE
    }

    public double minutes() {
        return checkMinutes + openMinutes;
    }
}
