package witnessmark.inference;

/** Expected gain about single causes from looking at one finding. */
final class ExpectGain {
    private final Solved solved;
    private final Sweep sweep;

    ExpectGain(Solved solved) {
        this.solved = solved;
        sweep = solved.sweep();
    }

    /**
     * @throws IllegalArgumentException if the finding is known for certain
     */
    Gain of(int finding) {
        boolean unsure = solved.observed.isUnsure(finding);
        int[] parts = solved.partsOf(finding);
        var absent = solved.vary(unsure ? saidAbsent(finding) : absent(finding), parts, sweep);
        double chance = -Math.expm1(absent.logRatio());
        double[] ifPresent;
        if (unsure) {
            var present = solved.vary(saidPresent(finding), parts, sweep);
            chance = Math.exp(present.logRatio());
            ifPresent = present.beliefs().toArray();
        } else if (chance >= Solved.LEAST_FOR_COMPLEMENT) {
            ifPresent = complement(absent, chance, parts);
        } else {
            var sum = new FirstToExplain(solved, finding, sweep);
            chance = sum.chance();
            ifPresent = sum.causes();
        }
        return gain(
                finding,
                chance,
                Math.exp(absent.logRatio()),
                ifPresent,
                absent.beliefs().toArray(),
                parts);
    }

    /** Entropy of a yes-or-no question, bits. */
    static double entropy(double chance) {
        return term(chance) + term(1 - chance);
    }

    private static double term(double p) {
        return p > 0 ? -p * Math.log(p) / Math.log(2) : 0;
    }

    private Gain gain(
            int finding, double chance, double chanceOfAbsent, double[] ifPresent, double[] ifAbsent, int[] parts) {
        var bits = new double[ifPresent.length];
        double sum = 0;
        for (int p : parts) {
            for (int c : solved.plan.parts()[p].causes()) {
                double left = chance * entropy(ifPresent[c]) + chanceOfAbsent * entropy(ifAbsent[c]);
                bits[c] = Math.max(0, entropy(solved.beliefs.present(c)) - left);
                sum += bits[c];
            }
        }
        return new Gain(finding, chance, sum, bits, ifPresent, ifAbsent);
    }

    private double[] complement(Solved.Varied absent, double chance, int[] parts) {
        double[] ifPresent = solved.beliefs.toArray();
        double chanceOfAbsent = Math.exp(absent.logRatio());
        for (int p : parts) {
            for (int c : solved.plan.parts()[p].causes()) {
                double both = ifPresent[c] - chanceOfAbsent * absent.beliefs().present(c);
                ifPresent[c] = Math.min(1, Math.max(0, both / chance));
            }
        }
        return ifPresent;
    }

    private Factors absent(int finding) {
        var varied = solved.factors.copy();
        varied.foldAbsent(finding, solved.observed, 0);
        return varied;
    }

    private Factors saidAbsent(int finding) {
        var varied = solved.factors.copy();
        var observed = solved.observed;
        varied.leaveWith(observed.vertexOf(finding), observed.logIfAbsent(finding), Double.NEGATIVE_INFINITY);
        return varied;
    }

    private Factors saidPresent(int finding) {
        var varied = solved.factors.copy();
        var observed = solved.observed;
        varied.leaveWith(observed.vertexOf(finding), Double.NEGATIVE_INFINITY, observed.logIfPresent(finding));
        return varied;
    }
}
