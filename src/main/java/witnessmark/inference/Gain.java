package witnessmark.inference;

/**
 * What looking at one finding can be expected to tell about single causes. Of a cause that is not listed it tells
 * nothing: its chance stays as it is, whatever the answer.
 *
 * @param finding the finding
 * @param chance P(finding present | evidence)
 * @param bits sum of {@code bitsByCause}. Not the gain about the set of causes as a whole: see {@link
 *     ExactInference#jointGain}
 * @param causes the causes of which it can tell something, ascending; the arrays below go with them
 * @param bitsByCause mutual information of each cause and the finding given the evidence, in bits, 0 or more
 * @param ifPresent chance of each cause if the finding turns out present; as now if it cannot
 * @param ifAbsent chance of each cause if the finding turns out absent; as now if it cannot
 */
public record Gain(
        int finding,
        double chance,
        double bits,
        int[] causes,
        double[] bitsByCause,
        double[] ifPresent,
        double[] ifAbsent) {}
