package witnessmark.inference;

/** An exact answer would need larger tables than allowed; no answer is given rather than a wrong one. */
public final class TooDense extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final double statesNeeded;
    private final long statesAllowed;

    TooDense(double statesNeeded, long statesAllowed) {
        super("An exact answer needs tables of %.3g states, %d are allowed: too many findings share causes."
                .formatted(statesNeeded, statesAllowed));
        this.statesNeeded = statesNeeded;
        this.statesAllowed = statesAllowed;
    }

    /** Table entries that the best order found would need. */
    public double statesNeeded() {
        return statesNeeded;
    }

    /** Table entries allowed. */
    public long statesAllowed() {
        return statesAllowed;
    }
}
