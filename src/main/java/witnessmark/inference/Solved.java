package witnessmark.inference;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Evidence with its answer, kept so that what differs from it in one place can be answered by sweeping few parts again. */
final class Solved {
    /** A chance above this may be had as 1 minus the other with 12 digits left; a smaller one is summed case by case. */
    static final double LEAST_FOR_COMPLEMENT = 1e-3;

    final GivenEvidence evidence;
    final Observed observed;
    final Plan plan;
    final Factors factors;
    final Beliefs beliefs;
    private final double[] logTotals;

    /**
     * @throws ImpossibleEvidence if the evidence has probability 0
     */
    Solved(GivenEvidence evidence, Observed observed, Plan plan) {
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
        var parts = new int[causes.length];
        int count = 0;
        for (int c : causes) {
            int part = plan.partOf(c);
            if (observed.isFree(c) && !contains(parts, count, part)) {
                parts[count++] = part;
            }
        }
        return Arrays.copyOf(parts, count);
    }

    private static boolean contains(int[] parts, int count, int part) {
        for (int i = 0; i < count; i++) {
            if (parts[i] == part) {
                return true;
            }
        }
        return false;
    }

    /** The parts that the report on a finding touches. */
    int[] partsOf(int finding) {
        return observed.kind(finding) == Observed.Kind.OPEN
                ? new int[] {plan.partOf(observed.vertexOf(finding))}
                : partsOf(observed.network.linkedCauses(finding));
    }

    /** The causes in some parts, ascending. */
    int[] causesIn(int[] parts) {
        if (parts.length == 1) {
            return plan.parts()[parts[0]].causes().clone();
        }
        int count = 0;
        for (int p : parts) {
            count += plan.parts()[p].causes().length;
        }
        var causes = new int[count];
        int at = 0;
        for (int p : parts) {
            int[] more = plan.parts()[p].causes();
            System.arraycopy(more, 0, causes, at, more.length);
            at += more.length;
        }
        Arrays.sort(causes);
        return causes;
    }

    /** ln of P(varied evidence) / P(evidence), when factors differ in the given parts and the constant only. */
    double logRatio(Factors varied, int[] parts, Sweep sweep) {
        double ratio = varied.constant() - factors.constant();
        for (int p : parts) {
            ratio += sweep.logTotal(plan.parts()[p], varied) - logTotals[p];
        }
        return ratio;
    }

    /**
     * As {@link #logRatio}, with the chances that the causes in those parts have then, left in {@code changed}: after an
     * impossible change they are as before.
     */
    double vary(Factors varied, int[] parts, Sweep sweep, Beliefs changed) {
        double ratio = varied.constant() - factors.constant();
        for (int p : parts) {
            var part = plan.parts()[p];
            double total = sweep.logTotal(part, varied);
            if (total > Double.NEGATIVE_INFINITY) {
                sweep.beliefs(part, changed);
            }
            ratio += total - logTotals[p];
        }
        if (ratio == Double.NEGATIVE_INFINITY) {
            for (int p : parts) {
                changed.take(beliefs, plan.parts()[p].causes());
            }
        }
        return ratio;
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
