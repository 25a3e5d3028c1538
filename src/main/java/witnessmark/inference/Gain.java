package witnessmark.inference;

/**
 * What looking at one finding can be expected to tell about single causes.
 *
 * @param finding the finding
 * @param chance P(finding present | evidence)
 * @param bits sum of {@code bitsByCause}. Not the gain about the set of causes as a whole: see {@link
 *     ExactInference#jointGain}
 * @param bitsByCause mutual information of each cause and the finding given the evidence, in bits, 0 or more
 * @param ifPresent chance of each cause if the finding turns out present; as now if it cannot
 * @param ifAbsent chance of each cause if the finding turns out absent; as now if it cannot
 */
public record Gain(
        int finding, double chance, double bits, double[] bitsByCause, double[] ifPresent, double[] ifAbsent) {}
