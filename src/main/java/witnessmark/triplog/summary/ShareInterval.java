package witnessmark.triplog.summary;

import java.util.Locale;
import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * So many of so many, with its exact interval (Clopper and Pearson, Biometrika 1934): the limits of the share are
 * quantiles of the beta distributions with x, n - x + 1 and x + 1, n - x.
 *
 * @param lower 95 % limit of the share, 0 to 1
 * @param upper 95 % limit of the share, 0 to 1
 */
public record ShareInterval(long count, long of, double lower, double upper) {
    private static final double TAIL = 0.025;

    /** @throws IllegalArgumentException unless 0 <= count <= of and of is above 0 */
    public static ShareInterval of(long count, long of) {
        if (count < 0 || of <= 0 || count > of) {
            throw new IllegalArgumentException(count + " of " + of + ": a count from 0 to the whole is needed");
        }
        double lower =
                count == 0 ? 0 : BetaDistribution.of(count, of - count + 1.0).inverseCumulativeProbability(TAIL);
        double upper =
                count == of ? 1 : BetaDistribution.of(count + 1.0, of - count).inverseSurvivalProbability(TAIL);
        return new ShareInterval(count, of, lower, upper);
    }

    /** {@code (95 %: under 1 to 45 in 100)}. */
    public String words() {
        return String.format(Locale.ROOT, "(95 %%: %s to %s in 100)", hundred(lower), hundred(upper));
    }

    private static String hundred(double share) {
        long whole = Math.round(100 * share);
        return whole == 0 && share > 0 ? "under 1" : whole == 100 && share < 1 ? "over 99" : String.valueOf(whole);
    }
}
