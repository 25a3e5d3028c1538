package witnessmark.inference;

/**
 * Chance of each cause given the evidence. Causes can be present together, so the chances need not sum to 1.
 *
 * @param causes P(cause present | evidence) by cause index
 * @param logEvidence natural logarithm of P(evidence), known causes included
 */
public record Posterior(double[] causes, double logEvidence) {
    /** P(cause present | evidence). */
    public double of(int cause) {
        return causes[cause];
    }
}
