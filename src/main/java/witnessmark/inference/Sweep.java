package witnessmark.inference;

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

    Sweep(Plan plan) {
        tape = new double[plan.tape()];
        slopes = new double[plan.widestTable()];
        enter = new double[2 * plan.vertices()];
        leave = new double[enter.length];
        slopeByEnter = new double[enter.length];
        given = new double[enter.length];
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
        for (int v : part.vertices()) {
            double top = Math.max(factors.enter(v, 0), factors.enter(v, 1));
            if (top == Double.NEGATIVE_INFINITY) {
                return top;
            }
            double topLeave = Math.max(factors.leave(v, 0), factors.leave(v, 1));
            for (int state = 0; state < 2; state++) {
                int i = 2 * v + state;
                enter[i] = tables.weight(factors.enter(v, state) - top);
                leave[i] = tables.weight(factors.leave(v, state) - topLeave);
                given[i] = enter[i];
            }
        }
        tape[0] = tables.one();
        for (Step step : part.steps()) {
            step.forward(this);
        }
        return tables.logarithm(tape[part.result()]);
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
