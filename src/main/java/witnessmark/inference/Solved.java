package witnessmark.inference;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Evidence with its answer, kept so that what differs from it in one place can be answered by sweeping few parts again. */
final class Solved {
    /** A chance above this may be had as 1 minus the other with 12 digits left; a smaller one is summed case by case. */
    static final double LEAST_FOR_COMPLEMENT = 1e-3;

    final Evidence evidence;
    final Observed observed;
    final Plan plan;
    final Factors factors;
    final Beliefs beliefs;
    private final double[] logTotals;

    /** An answer to changed factors: how much less probable the change makes the evidence, and the chances then. */
    record Varied(double logRatio, Beliefs beliefs) {}

    /**
     * @throws ImpossibleEvidence if the evidence has probability 0
     */
    Solved(Evidence evidence, Observed observed, Plan plan) {
        this.evidence = evidence;
        this.observed = observed;
        this.plan = plan;
        factors = Factors.of(observed);
        if (factors.constant() == Double.NEGATIVE_INFINITY) {
            throw new ImpossibleEvidence(refutedAlone());
        }
        beliefs = new Beliefs(observed.network.causes());
        logTotals = new double[plan.parts().length];
        var sweep = new Sweep(plan);
        for (int p = 0; p < logTotals.length; p++) {
            var part = plan.parts()[p];
            logTotals[p] = sweep.logTotal(part, factors);
            if (logTotals[p] == Double.NEGATIVE_INFINITY) {
                throw new ImpossibleEvidence(findingsOf(p));
            }
            sweep.beliefs(part, beliefs);
        }
    }

    double logEvidence() {
        return factors.constant() + Arrays.stream(logTotals).sum();
    }

    Sweep sweep() {
        return new Sweep(plan);
    }

    /** The parts in which free causes among those given are. */
    int[] partsOf(int[] causes) {
        return IntStream.of(causes)
                .filter(observed::isFree)
                .map(plan::partOf)
                .distinct()
                .toArray();
    }

    /** The parts that the report on a finding touches. */
    int[] partsOf(int finding) {
        return observed.kind(finding) == Observed.Kind.OPEN
                ? new int[] {plan.partOf(observed.vertexOf(finding))}
                : partsOf(observed.network.linkedCauses(finding));
    }

    /** ln of P(varied evidence) / P(evidence), when factors differ in the given parts and the constant only. */
    double logRatio(Factors varied, int[] parts, Sweep sweep) {
        double ratio = varied.constant() - factors.constant();
        for (int p : parts) {
            ratio += sweep.logTotal(plan.parts()[p], varied) - logTotals[p];
        }
        return ratio;
    }

    /** As {@link #logRatio}, with the chances; those in other parts and after an impossible change are as before. */
    Varied vary(Factors varied, int[] parts, Sweep sweep) {
        double ratio = varied.constant() - factors.constant();
        var changed = beliefs.copy();
        for (int p : parts) {
            var part = plan.parts()[p];
            double total = sweep.logTotal(part, varied);
            if (total > Double.NEGATIVE_INFINITY) {
                sweep.beliefs(part, changed);
            }
            ratio += total - logTotals[p];
        }
        return new Varied(ratio, ratio > Double.NEGATIVE_INFINITY ? changed : beliefs);
    }

    /** Findings reported absent that the background or a known cause is certain to produce. */
    private List<Integer> refutedAlone() {
        return IntStream.of(observed.telling())
                .filter(f -> observed.kind(f) == Observed.Kind.ABSENT)
                .filter(f -> Factors.logUnexplained(f, observed) == Double.NEGATIVE_INFINITY)
                .boxed()
                .toList();
    }

    private List<Integer> findingsOf(int part) {
        return IntStream.of(observed.telling())
                .filter(f -> IntStream.of(partsOf(f)).anyMatch(p -> p == part))
                .boxed()
                .toList();
    }
}
