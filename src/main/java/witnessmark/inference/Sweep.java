package witnessmark.inference;

import java.util.Arrays;

/**
 * Runs the steps of a plan over its tables: forward for the total weight of one part, then backward for all its causes
 * at once. Holds the working arrays, so one sweep serves one thread.
 */
final class Sweep {
    /** Below this total (about 1e-200) plain weights may have lost something that counts. */
    private static final double LOG_FLOOR = -460;

    private static final Tables PLAIN = new PlainTables();
    private static final Tables LOGARITHMIC = new LogTables();

    final double[] tape;
    final double[] slopes;
    final double[] enter;
    final double[] leave;
    final double[] slopeByEnter;
    Tables tables = PLAIN;
    private final double[] given;
    /** The factors that the weights were made of, and for which arithmetic: most stay from one sweep to the next. */
    private final double[] weighedEnter;

    private final double[] weighedLeave;
    private Tables weighed = PLAIN;

    Sweep(Plan plan) {
        tape = new double[plan.tape()];
        slopes = new double[plan.widestTable()];
        enter = new double[2 * plan.vertices()];
        leave = new double[enter.length];
        slopeByEnter = new double[enter.length];
        given = new double[enter.length];
        weighedEnter = new double[enter.length];
        weighedLeave = new double[enter.length];
        forgetWeights();
    }

    /** Natural logarithm of the summed weights of one part; minus infinity if no state is possible. */
    double logTotal(Plan.Part part, Factors factors) {
        tables = PLAIN;
        double total = forward(part, factors);
        if (total < LOG_FLOOR) {
            tables = LOGARITHMIC;
            total = forward(part, factors);
        }
        return total + scale(part, factors);
    }

    /** Chances that the causes of a part are present and absent; to be called right after its {@link #logTotal}. */
    void beliefs(Plan.Part part, Beliefs beliefs) {
        slopes[0] = tables.one();
        Step[] steps = part.steps();
        for (int i = steps.length - 1; i >= 0; i--) {
            steps[i].backward(this);
        }
        for (int c : part.causes()) {
            double absent = tables.logarithm(given[2 * c]) + tables.logarithm(slopeByEnter[2 * c]);
            double present = tables.logarithm(given[2 * c + 1]) + tables.logarithm(slopeByEnter[2 * c + 1]);
            beliefs.set(c, present - absent);
        }
    }

    private double forward(Plan.Part part, Factors factors) {
        if (weighed != tables) {
            weighed = tables;
            forgetWeights();
        }
        for (int v : part.vertices()) {
            if (factors.enter(v, 0) == Double.NEGATIVE_INFINITY && factors.enter(v, 1) == Double.NEGATIVE_INFINITY) {
                return Double.NEGATIVE_INFINITY;
            }
            weigh(v, factors);
        }
        tape[0] = tables.one();
        for (Step step : part.steps()) {
            step.forward(this);
        }
        return tables.logarithm(tape[part.result()]);
    }

    private void forgetWeights() {
        Arrays.fill(weighedEnter, Double.NaN);
        Arrays.fill(weighedLeave, Double.NaN);
    }

    private void weigh(int vertex, Factors factors) {
        int at = 2 * vertex;
        weigh(at, factors.enter(vertex, 0), factors.enter(vertex, 1), weighedEnter, given);
        enter[at] = given[at];
        enter[at + 1] = given[at + 1];
        weigh(at, factors.leave(vertex, 0), factors.leave(vertex, 1), weighedLeave, leave);
    }

    /** Weights of the two factors against the larger, reckoned anew only where they are others than the last time. */
    private void weigh(int at, double factor0, double factor1, double[] weighed, double[] weights) {
        if (weighed[at] != factor0 || weighed[at + 1] != factor1) {
            double top = Math.max(factor0, factor1);
            weighed[at] = factor0;
            weighed[at + 1] = factor1;
            weights[at] = tables.weight(factor0 - top);
            weights[at + 1] = tables.weight(factor1 - top);
        }
    }

    private static double scale(Plan.Part part, Factors factors) {
        double scale = 0;
        for (int v : part.vertices()) {
            scale += Math.max(factors.enter(v, 0), factors.enter(v, 1));
            scale += Math.max(factors.leave(v, 0), factors.leave(v, 1));
        }
        return scale;
    }
}
