package witnessmark.inference;

import witnessmark.refusal.Refusal;

/** An exact answer would need more states to be gone through than allowed; no answer is given rather than a wrong one. */
public final class TooDense extends Refusal {
    private static final long serialVersionUID = 1L;

    private final double statesNeeded;
    private final long statesAllowed;

    TooDense(double statesNeeded, long statesAllowed, String why) {
        super(
                "too many things have been found at once to weigh them exactly, and a guess is not given in place of it"
                        + " (%s: %.3g states to be gone through, %d are allowed)"
                                .formatted(why, statesNeeded, statesAllowed),
                "look again at the last things found, and take back what does not hold");
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
