package witnessmark.diagnosis;

import java.util.List;
import witnessmark.casefile.FindingState;

/**
 * Two accounts of one case side by side. All decibans are for the first against the second: positive speaks for the
 * first.
 *
 * @param findings what each finding on record says, most telling first; each account taken alone, nothing else at work
 * @param decibansAlone the sum of the findings' decibans
 * @param decibansWithOthers how much better the first explains all findings when other causes may be at work besides
 * @param priorDecibans how the two stood before these findings, the rules' changes counted in
 * @param deciding open findings that would tell the two apart, most telling first
 */
public record Accounts(
        Side first,
        Side second,
        List<Said> findings,
        double decibansAlone,
        double decibansWithOthers,
        double priorDecibans,
        List<Deciding> deciding) {

    /**
     * One account.
     *
     * @param applies whether it can apply to this gearbox at all
     * @param probability of the cause on all the evidence, other causes allowed
     */
    public record Side(String cause, String title, String mechanism, boolean applies, double probability) {}

    /**
     * What one finding says.
     *
     * @param state as taken: present, absent or unsure
     * @param ifFirst chance that the sign is there if only the first is at work
     * @param ifSecond chance that the sign is there if only the second is at work
     */
    public record Said(
            String finding, String title, FindingState state, double ifFirst, double ifSecond, double decibans) {}

    /**
     * A finding not looked at.
     *
     * @param expectedDecibans how far the answer can be expected to move the odds to the true one of the two
     */
    public record Deciding(
            String finding,
            String title,
            String ask,
            String accessTitle,
            double ifFirst,
            double ifSecond,
            double expectedDecibans) {}
}
