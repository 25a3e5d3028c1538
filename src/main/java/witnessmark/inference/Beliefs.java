package witnessmark.inference;

/** Chance of each cause, kept with the chance of its absence so that neither is lost when the other is near 1. */
final class Beliefs {
    private static final double CERTAIN = 200 * Math.log(10);
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private final double[] present;
    private final double[] logOdds;

    Beliefs(int causes) {
        present = new double[causes];
        logOdds = new double[causes];
    }

    /** Takes over the chances of some causes. */
    void take(Beliefs other, int[] causes) {
        for (int c : causes) {
            present[c] = other.present[c];
            logOdds[c] = other.logOdds[c];
        }
    }

    /** Notes the odds of a cause; beyond 1e200 either way they count as certainty. */
    void set(int cause, double logOddsOfCause) {
        logOdds[cause] = Math.abs(logOddsOfCause) > CERTAIN ? Math.copySign(INFINITE, logOddsOfCause) : logOddsOfCause;
        present[cause] = 1 / (1 + Math.exp(-logOdds[cause]));
    }

    double present(int cause) {
        return present[cause];
    }

    /** Natural logarithm of the odds; infinite when the cause is certain or ruled out. */
    double logOdds(int cause) {
        return logOdds[cause];
    }

    /** Chances of some causes, in the order given. */
    double[] present(int[] causes) {
        var chances = new double[causes.length];
        for (int i = 0; i < causes.length; i++) {
            chances[i] = present[causes[i]];
        }
        return chances;
    }

    double[] toArray() {
        return present.clone();
    }
}
