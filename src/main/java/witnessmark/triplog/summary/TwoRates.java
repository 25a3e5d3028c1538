package witnessmark.triplog.summary;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Two rates compared exactly: given both counts' sum, the count after is binomial under equal rates (the conditional
 * test). The interval of the ratio comes from the Clopper-Pearson interval of that share, and the p value is twice the
 * smaller tail, so that p and interval always agree.
 *
 * @param ratio rate after divided by rate before; infinite if there was none before, NaN if there was none at all
 * @param lower 95 % limit of the ratio
 * @param upper 95 % limit of the ratio, infinite if there was none before
 * @param pTwoSided chance of counts as uneven as these if nothing changed
 * @param pFell chance of so few after, or fewer, if nothing changed
 */
public record TwoRates(
        long countBefore,
        double exposureBefore,
        long countAfter,
        double exposureAfter,
        double ratio,
        double lower,
        double upper,
        double pTwoSided,
        double pFell) {

    private static final double TAIL = 0.025;

    /** @throws IllegalArgumentException for negative or enormous counts, or an exposure that is not above 0 */
    public static TwoRates compare(long countBefore, double exposureBefore, long countAfter, double exposureAfter) {
        boolean counts = countBefore >= 0 && countAfter >= 0 && countBefore + countAfter <= Integer.MAX_VALUE;
        if (!counts || !(exposureBefore > 0) || !(exposureAfter > 0)) {
            throw new IllegalArgumentException("before " + countBefore + " in " + exposureBefore + ", after "
                    + countAfter + " in " + exposureAfter + ": counts from 0 and exposures above 0 are needed");
        }
        int sum = (int) (countBefore + countAfter);
        double share = exposureAfter / (exposureAfter + exposureBefore);
        double odds = exposureBefore / exposureAfter;
        double low = countAfter == 0
                ? 0
                : BetaDistribution.of(countAfter, countBefore + 1.0).inverseCumulativeProbability(TAIL);
        double high = countBefore == 0
                ? 1
                : BetaDistribution.of(countAfter + 1.0, countBefore).inverseSurvivalProbability(TAIL);
        double ratio = countAfter / exposureAfter / (countBefore / exposureBefore);
        BinomialDistribution equal = BinomialDistribution.of(sum, share);
        double atMost = equal.cumulativeProbability((int) countAfter);
        double atLeast = countAfter == 0 ? 1 : equal.survivalProbability((int) countAfter - 1);
        return new TwoRates(
                countBefore,
                exposureBefore,
                countAfter,
                exposureAfter,
                ratio,
                low / (1 - low) * odds,
                high == 1 ? Double.POSITIVE_INFINITY : high / (1 - high) * odds,
                Math.min(1, 2 * Math.min(atMost, atLeast)),
                atMost);
    }
}
