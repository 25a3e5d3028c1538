package witnessmark.triplog.summary;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * A count over an exposure as a rate with its exact Poisson interval (Garwood, Biometrika 1936): the limits of the mean
 * are half the quantiles of chi-square with 2x and 2x + 2 degrees of freedom.
 *
 * @param count events
 * @param exposure what they are counted over, above 0
 * @param rate events per unit of exposure
 * @param lower limit of the rate; 0 for no events
 * @param upper limit of the rate
 */
public record CountInterval(long count, double exposure, double rate, double lower, double upper) {

    /**
     * @param level of the two-sided interval, such as 0.95
     * @throws IllegalArgumentException for a negative count, an exposure that is not above 0, or a level not inside 0 to 1
     */
    public static CountInterval of(long count, double exposure, double level) {
        if (count < 0 || !(exposure > 0) || !(level > 0 && level < 1)) {
            throw new IllegalArgumentException("count " + count + ", exposure " + exposure + ", level " + level
                    + ": a count from 0, an exposure above 0 and a level between 0 and 1 are needed");
        }
        double tail = (1 - level) / 2;
        double lower = count == 0 ? 0 : ChiSquaredDistribution.of(2.0 * count).inverseCumulativeProbability(tail) / 2;
        double upper = ChiSquaredDistribution.of(2.0 * count + 2).inverseSurvivalProbability(tail) / 2;
        return new CountInterval(count, exposure, count / exposure, lower / exposure, upper / exposure);
    }

    public static CountInterval of(long count, double exposure) {
        return of(count, exposure, 0.95);
    }
}
