package witnessmark.inference;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Exact answers about one network. Nothing is subtracted on the way, so that nothing cancels, however many findings are
 * present. May be used by several threads at once.
 *
 * <p>Every method throws {@link IllegalArgumentException} for an index that the network does not have, {@link
 * ImpossibleEvidence} if the evidence has probability 0, and {@link TooDense} if the exact answer needs more table
 * entries than allowed.
 */
public final class ExactInference {
    /** Table entries allowed unless told otherwise: 128 MB, and well under a second. */
    private static final long STATES_ALLOWED = 1L << 24;

    private final Network network;
    private final long statesAllowed;
    /** The plan last used: questions about one case come one after another and share it. */
    private volatile @Nullable Plan latest;

    public ExactInference(Network network) {
        this(network, STATES_ALLOWED);
    }

    /**
     * @param statesAllowed table entries (of 8 bytes) that an answer may need, 1 to 2^28
     */
    public ExactInference(Network network, long statesAllowed) {
        if (statesAllowed < 1 || statesAllowed > 1L << 28) {
            throw new IllegalArgumentException(statesAllowed + " table entries: give a number from 1 to 2^28.");
        }
        this.network = network;
        this.statesAllowed = statesAllowed;
    }

    /** Chance of every cause given the evidence; the priors if there is none. */
    public Posterior posterior(Evidence evidence) {
        var observed = new Observed(network, evidence);
        var plan = planFor(observed);
        var factors = Factors.of(observed);
        var sweep = new Sweep(plan);
        var beliefs = new Beliefs(network.causes());
        double logEvidence = factors.constant();
        for (var part : plan.parts()) {
            double total = sweep.logTotal(part, factors);
            if (total == Double.NEGATIVE_INFINITY) {
                throw new ImpossibleEvidence(List.of());
            }
            sweep.beliefs(part, beliefs);
            logEvidence += total;
        }
        return new Posterior(beliefs.toArray(), logEvidence);
    }

    private Plan planFor(Observed observed) {
        var plan = latest;
        if (plan == null || !plan.suits(observed)) {
            plan = Plan.of(observed, statesAllowed);
            latest = plan;
        }
        return plan;
    }
}
