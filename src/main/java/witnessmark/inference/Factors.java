package witnessmark.inference;

/**
 * The numbers that go into the tables, as natural logarithms: for each vertex of a plan (causes first, then open
 * findings) the weight of its state 0 and 1 on entering and on leaving the tables, and one constant for all that touches
 * no table. State 1 of a cause is "present"; state 1 of a finding is "something has produced it".
 */
final class Factors {
    private static final double NEVER = Double.NEGATIVE_INFINITY;

    private final double[] enter;
    private final double[] leave;
    private double constant;

    private Factors(double[] enter, double[] leave, double constant) {
        this.enter = enter;
        this.leave = leave;
        this.constant = constant;
    }

    /** The factors of the evidence, for a plan made from the same evidence. */
    static Factors of(Observed observed) {
        var factors = unreported(observed);
        for (int f : observed.reported()) {
            factors.foldUnlessOpen(f, observed);
        }
        return factors;
    }

    /** The factors before any report of absence is folded in. */
    static Factors unreported(Observed observed) {
        var network = observed.network;
        int causes = network.causes();
        int[] open = observed.open();
        var factors = new Factors(new double[2 * (causes + open.length)], new double[2 * (causes + open.length)], 0);
        for (int c = 0; c < causes; c++) {
            factors.enterCause(c, network, observed.state(c));
        }
        for (int k = 0; k < open.length; k++) {
            factors.enterFinding(causes + k, open[k], observed);
        }
        return factors;
    }

    /** From the factors unreported those of the evidence less the report on one finding, for the plan of the whole. */
    Factors without(int finding, Observed observed) {
        var factors = copy();
        for (int f : observed.reported()) {
            if (f != finding) {
                factors.foldUnlessOpen(f, observed);
            } else if (observed.kind(f) == Observed.Kind.OPEN) {
                factors.leaveWith(observed.vertexOf(f), 0, 0);
            }
        }
        return factors;
    }

    Factors copy() {
        return new Factors(enter.clone(), leave.clone(), constant);
    }

    /** Takes over from factors for the same plan what a report on the finding, seen or not, can have changed. */
    void setAbout(int finding, Observed observed, Factors other) {
        for (int cause : observed.network.linkedCauses(finding)) {
            setCause(cause, other);
        }
        if (observed.kind(finding) == Observed.Kind.OPEN) {
            int vertex = observed.vertexOf(finding);
            leaveWith(vertex, other.leave(vertex, 0), other.leave(vertex, 1));
        }
        constant = other.constant;
    }

    /** Takes over the weights of a cause. */
    void setCause(int cause, Factors other) {
        enter[2 * cause] = other.enter[2 * cause];
        enter[2 * cause + 1] = other.enter[2 * cause + 1];
    }

    double enter(int vertex, int state) {
        return enter[2 * vertex + state];
    }

    double leave(int vertex, int state) {
        return leave[2 * vertex + state];
    }

    double constant() {
        return constant;
    }

    /** ln of the chance that neither the background nor a cause known to be present produces a finding. */
    static double logUnexplained(int finding, Observed observed) {
        int[] linked = observed.network.linkedCauses(finding);
        double[] logFailures = observed.network.logFailures(finding);
        double unexplained = observed.network.logNoBackground(finding);
        for (int i = 0; i < linked.length; i++) {
            if (observed.state(linked[i]) == Observed.State.PRESENT) {
                unexplained += logFailures[i];
            }
        }
        return unexplained;
    }

    /** ln of the chance that the background or a cause known to be present produces a finding; summed, not subtracted. */
    static double logExplained(int finding, Observed observed) {
        int[] linked = observed.network.linkedCauses(finding);
        double[] strengths = observed.network.strengths(finding);
        double[] logFailures = observed.network.logFailures(finding);
        double unexplained = observed.network.logNoBackground(finding);
        double explained = Math.log(observed.network.background(finding));
        for (int i = 0; i < linked.length; i++) {
            if (observed.state(linked[i]) == Observed.State.PRESENT) {
                explained = LogTables.sum(explained, unexplained + Math.log(strengths[i]));
                unexplained += logFailures[i];
            }
        }
        return explained;
    }

    /** Folds in that a finding, seen through a report of the given log-chance, is not there. */
    void foldAbsent(int finding, Observed observed, double logChanceOfReport) {
        int[] linked = observed.network.linkedCauses(finding);
        double[] logFailures = observed.network.logFailures(finding);
        constant += logChanceOfReport + logUnexplained(finding, observed);
        for (int i = 0; i < linked.length; i++) {
            if (observed.isFree(linked[i])) {
                weigh(linked[i], 1, logFailures[i]);
            }
        }
    }

    /** Multiplies the weight of one state of a cause. */
    void weigh(int cause, int state, double logWeight) {
        enter[2 * cause + state] += logWeight;
    }

    /** Rules one state of a cause out. */
    void ruleOut(int cause, int state) {
        enter[2 * cause + state] = NEVER;
    }

    /** Sets the weights with which an open finding leaves. */
    void leaveWith(int vertex, double logIfUnexplained, double logIfExplained) {
        leave[2 * vertex] = logIfUnexplained;
        leave[2 * vertex + 1] = logIfExplained;
    }

    private void foldUnlessOpen(int finding, Observed observed) {
        switch (observed.kind(finding)) {
            case ABSENT -> foldAbsent(finding, observed, observed.logIfAbsent(finding));
            case NOTHING -> constant += observed.logIfAbsent(finding);
            case OPEN -> {}
        }
    }

    private void enterCause(int cause, Network network, Observed.State state) {
        enter[2 * cause] = state == Observed.State.PRESENT ? NEVER : network.logAbsent(cause);
        enter[2 * cause + 1] = state == Observed.State.ABSENT ? NEVER : network.logPresent(cause);
    }

    private void enterFinding(int vertex, int finding, Observed observed) {
        enter[2 * vertex] = logUnexplained(finding, observed);
        enter[2 * vertex + 1] = logExplained(finding, observed);
        leaveWith(vertex, observed.logIfAbsent(finding), observed.logIfPresent(finding));
    }
}
