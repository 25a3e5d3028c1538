package witnessmark.inference;

import witnessmark.refusal.Refusal;

/** An exact answer would need more states to be gone through than allowed; no answer is given rather than a wrong one. */
public final class TooDense extends Refusal {
    private static final long serialVersionUID = 1L;

    private final double statesNeeded;
    private final long statesAllowed;

    TooDense(double statesNeeded, long statesAllowed, String why) {
        super("An exact answer needs %.3g states to be gone through, %d are allowed: %s."
                .formatted(statesNeeded, statesAllowed, why));
        this.statesNeeded = statesNeeded;
        this.statesAllowed = statesAllowed;
    }

    /** States that the best order found would need. */
    public double statesNeeded() {
        return statesNeeded;
    }

    /** States allowed. */
    public long statesAllowed() {
        return statesAllowed;
    }
}
