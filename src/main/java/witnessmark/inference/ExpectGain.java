package witnessmark.inference;

/** Expected gain about single causes from looking at one finding. Holds the working arrays, so it serves one thread. */
final class ExpectGain {
    private static final double LN_2 = Math.log(2);

    private final Solved solved;
    private final Sweep sweep;
    /** Those of the evidence, but while a finding is tried. */
    private final Factors varied;

    private final Beliefs changed;
    private final double[] entropyNow;

    ExpectGain(Solved solved) {
        this.solved = solved;
        sweep = solved.sweep();
        varied = solved.factors.copy();
        changed = new Beliefs(solved.observed.network.causes());
        entropyNow = new double[solved.observed.network.causes()];
        for (int c = 0; c < entropyNow.length; c++) {
            entropyNow[c] = entropy(solved.beliefs.present(c));
        }
    }

    /**
     * @throws IllegalArgumentException if the finding is known for certain
     */
    Gain of(int finding) {
        Gain gain = tried(finding);
        varied.setAbout(finding, solved.observed, solved.factors);
        return gain;
    }

    private Gain tried(int finding) {
        boolean unsure = solved.observed.isUnsure(finding);
        int[] parts = solved.partsOf(finding);
        int[] causes = solved.causesIn(parts);
        double absent = vary(unsure ? saidAbsent(finding) : absent(finding), parts);
        double[] ifAbsent = changed.present(causes);
        double chance = -Math.expm1(absent);
        double[] ifPresent;
        if (unsure) {
            chance = Math.exp(vary(saidPresent(finding), parts));
            ifPresent = changed.present(causes);
        } else if (chance >= Solved.LEAST_FOR_COMPLEMENT) {
            ifPresent = complement(causes, ifAbsent, Math.exp(absent), chance);
        } else {
            varied.setAbout(finding, solved.observed, solved.factors);
            var sum = new FirstToExplain(solved, finding, parts, causes, varied, sweep, changed);
            chance = sum.chance();
            ifPresent = sum.chances();
        }
        return gain(finding, chance, Math.exp(absent), causes, ifPresent, ifAbsent);
    }

    /** Entropy of a yes-or-no question, bits. */
    static double entropy(double chance) {
        return term(chance) + term(1 - chance);
    }

    private static double term(double p) {
        return p > 0 ? -p * Math.log(p) / LN_2 : 0;
    }

    private Gain gain(
            int finding, double chance, double chanceOfAbsent, int[] causes, double[] ifPresent, double[] ifAbsent) {
        var bits = new double[causes.length];
        double sum = 0;
        for (int i = 0; i < causes.length; i++) {
            double left = chance * entropy(ifPresent[i]) + chanceOfAbsent * entropy(ifAbsent[i]);
            bits[i] = Math.max(0, entropyNow[causes[i]] - left);
            sum += bits[i];
        }
        return new Gain(finding, chance, sum, causes, bits, ifPresent, ifAbsent);
    }

    private double[] complement(int[] causes, double[] ifAbsent, double chanceOfAbsent, double chance) {
        double[] ifPresent = solved.beliefs.present(causes);
        for (int i = 0; i < causes.length; i++) {
            double both = ifPresent[i] - chanceOfAbsent * ifAbsent[i];
            ifPresent[i] = Math.min(1, Math.max(0, both / chance));
        }
        return ifPresent;
    }

    private double vary(Factors factors, int[] parts) {
        return solved.vary(factors, parts, sweep, changed);
    }

    private Factors absent(int finding) {
        varied.foldAbsent(finding, solved.observed, 0);
        return varied;
    }

    private Factors saidAbsent(int finding) {
        var observed = solved.observed;
        varied.leaveWith(observed.vertexOf(finding), observed.logIfAbsent(finding), Double.NEGATIVE_INFINITY);
        return varied;
    }

    private Factors saidPresent(int finding) {
        var observed = solved.observed;
        varied.leaveWith(observed.vertexOf(finding), Double.NEGATIVE_INFINITY, observed.logIfPresent(finding));
        return varied;
    }
}
