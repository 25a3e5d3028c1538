package witnessmark.inference;

/**
 * An unreported finding taken as present, split into cases that exclude each other: the background (or a known cause)
 * produces it, or the first of its free causes does, or the second and not the first, and so on. Each case only reweighs
 * causes, so a rare finding is summed from small numbers and not left over from large ones.
 */
final class FirstToExplain {
    private final Solved solved;
    private final int[] causes;
    private final double[] sums;
    private double chance;

    /**
     * @param parts the parts that the finding touches
     * @param causes the causes in them
     * @param earlierDidNot the factors of the evidence, to work with: those of the linked causes are left changed
     * @param changed to work with
     */
    FirstToExplain(
            Solved solved,
            int finding,
            int[] parts,
            int[] causes,
            Factors earlierDidNot,
            Sweep sweep,
            Beliefs changed) {
        this.solved = solved;
        this.causes = causes;
        var observed = solved.observed;
        sums = new double[causes.length];
        add(Math.exp(Factors.logExplained(finding, observed)), solved.beliefs);
        double logUnexplained = Factors.logUnexplained(finding, observed);
        int[] linked = observed.network.linkedCauses(finding);
        double[] strengths = observed.network.strengths(finding);
        for (int i = 0; i < linked.length; i++) {
            if (observed.isFree(linked[i]) && strengths[i] > 0) {
                // This one did: it is there, and acted.
                earlierDidNot.ruleOut(linked[i], 0);
                earlierDidNot.weigh(linked[i], 1, Math.log(strengths[i]));
                double logRatio = solved.vary(earlierDidNot, parts, sweep, changed);
                add(Math.exp(logUnexplained + logRatio), changed);
                earlierDidNot.setCause(linked[i], solved.factors);
                earlierDidNot.weigh(linked[i], 1, Math.log1p(-strengths[i]));
            }
        }
    }

    /** P(finding present | evidence). */
    double chance() {
        return chance;
    }

    /** Chances of the causes if the finding is present; as they stand if it cannot be. */
    double[] chances() {
        if (chance == 0) {
            return solved.beliefs.present(causes);
        }
        var conditional = sums.clone();
        for (int i = 0; i < conditional.length; i++) {
            conditional[i] = Math.min(1, conditional[i] / chance);
        }
        return conditional;
    }

    private void add(double weight, Beliefs beliefs) {
        chance += weight;
        for (int i = 0; i < causes.length; i++) {
            sums[i] += weight * beliefs.present(causes[i]);
        }
    }
}
