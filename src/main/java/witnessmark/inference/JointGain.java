package witnessmark.inference;

/** Expected gain about the whole set of causes from looking at one finding, by going through the sets of its causes. */
final class JointGain {
    private static final int MOST_CAUSES = 16;

    private final Solved solved;
    private final int finding;
    private final Sweep sweep;
    private final int[] parts;
    private final double logOddsOfReport;
    private double chance;
    private double left;

    /**
     * @throws TooDense if more than 16 free causes are linked to the finding
     */
    JointGain(Solved solved, int finding) {
        this.solved = solved;
        this.finding = finding;
        sweep = solved.sweep();
        parts = solved.partsOf(finding);
        logOddsOfReport = solved.observed.logIfPresent(finding) - solved.observed.logIfAbsent(finding);
        int free = solved.observed.freeLinked(finding).length;
        if (free > MOST_CAUSES) {
            throw new TooDense(
                    Math.scalb(1.0, free), 1 << MOST_CAUSES, "too many causes are linked to finding " + finding);
        }
        visit(0, solved.factors, Factors.logUnexplained(finding, solved.observed));
    }

    /** H(finding | evidence) less the mean of H(finding | set of causes, evidence), bits. */
    double bits() {
        return Math.max(0, ExpectGain.entropy(chance) - left);
    }

    private void visit(int link, Factors factors, double logUnexplained) {
        int[] linked = solved.observed.network.linkedCauses(finding);
        if (link == linked.length) {
            addSet(factors, logUnexplained);
            return;
        }
        double strength = solved.observed.network.strengths(finding)[link];
        if (strength == 0 || !solved.observed.isFree(linked[link])) {
            visit(link + 1, factors, logUnexplained);
            return;
        }
        var absent = factors.copy();
        absent.ruleOut(linked[link], 1);
        visit(link + 1, absent, logUnexplained);
        var present = factors.copy();
        present.ruleOut(linked[link], 0);
        visit(link + 1, present, logUnexplained + Math.log1p(-strength));
    }

    private void addSet(Factors factors, double logUnexplained) {
        double ofSet = Math.exp(solved.logRatio(factors, parts, sweep));
        if (ofSet > 0) {
            double logOdds = Math.log(-Math.expm1(logUnexplained)) - logUnexplained + logOddsOfReport;
            double present = 1 / (1 + Math.exp(-logOdds));
            chance += ofSet * present;
            left += ofSet * ExpectGain.entropy(present);
        }
    }
}
