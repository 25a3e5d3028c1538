package witnessmark.inference;

/** Weighs each report by leaving it out. */
final class WeighReports {
    private static final double DECIBANS_PER_NEPER = 10 / Math.log(10);

    private final Solved solved;
    private final Sweep sweep;
    private final Factors unreported;
    private final Beliefs changed;

    WeighReports(Solved solved) {
        this.solved = solved;
        sweep = solved.sweep();
        unreported = Factors.unreported(solved.observed);
        changed = new Beliefs(solved.observed.network.causes());
    }

    ReportWeights forCauses(int[] causes) {
        int[] findings = solved.observed.telling();
        var decibans = new double[findings.length][];
        for (int i = 0; i < findings.length; i++) {
            decibans[i] = weigh(findings[i], causes);
        }
        return new ReportWeights(findings, causes.clone(), decibans);
    }

    private double[] weigh(int finding, int[] causes) {
        int[] parts = solved.partsOf(finding);
        changed.take(solved.beliefs, causes);
        solved.vary(unreported.without(finding, solved.observed), parts, sweep, changed);
        var decibans = new double[causes.length];
        for (int i = 0; i < causes.length; i++) {
            double now = solved.beliefs.logOdds(causes[i]);
            double then = changed.logOdds(causes[i]);
            // Equal first: a cause certain or ruled out either way has infinite odds on both sides.
            decibans[i] = now == then ? 0 : DECIBANS_PER_NEPER * (now - then);
        }
        return decibans;
    }
}
