package witnessmark.inference;

/**
 * An unreported finding taken as present, split into cases that exclude each other: the background (or a known cause)
 * produces it, or the first of its free causes does, or the second and not the first, and so on. Each case only reweighs
 * causes, so a rare finding is summed from small numbers and not left over from large ones.
 */
final class FirstToExplain {
    private final Solved solved;
    private final double[] causes;
    private double chance;

    FirstToExplain(Solved solved, int finding, Sweep sweep) {
        this.solved = solved;
        var observed = solved.observed;
        causes = new double[observed.network.causes()];
        add(Math.exp(Factors.logExplained(finding, observed)), solved.beliefs);
        double logUnexplained = Factors.logUnexplained(finding, observed);
        int[] parts = solved.partsOf(finding);
        int[] linked = observed.network.linkedCauses(finding);
        double[] strengths = observed.network.strengths(finding);
        var earlierDidNot = solved.factors.copy();
        for (int i = 0; i < linked.length; i++) {
            if (observed.isFree(linked[i]) && strengths[i] > 0) {
                var thisDid = earlierDidNot.copy();
                thisDid.ruleOut(linked[i], 0);
                thisDid.weigh(linked[i], 1, Math.log(strengths[i]));
                var varied = solved.vary(thisDid, parts, sweep);
                add(Math.exp(logUnexplained + varied.logRatio()), varied.beliefs());
                earlierDidNot.weigh(linked[i], 1, Math.log1p(-strengths[i]));
            }
        }
    }

    /** P(finding present | evidence). */
    double chance() {
        return chance;
    }

    /** Chance of each cause if the finding is present; as it stands if it cannot be. */
    double[] causes() {
        if (chance == 0) {
            return solved.beliefs.toArray();
        }
        var conditional = causes.clone();
        for (int c = 0; c < conditional.length; c++) {
            conditional[c] = Math.min(1, conditional[c] / chance);
        }
        return conditional;
    }

    private void add(double weight, Beliefs beliefs) {
        chance += weight;
        for (int c = 0; c < causes.length; c++) {
            causes[c] += weight * beliefs.present(c);
        }
    }
}
