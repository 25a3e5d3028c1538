package witnessmark.inference;

import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
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
    /** The answer last worked out: questions about one case come one after another and share it. */
    private volatile @Nullable Solved latest;

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
    public Posterior posterior(GivenEvidence evidence) {
        var solved = solve(evidence);
        return new Posterior(solved.beliefs.toArray(), solved.logEvidence());
    }

    /** Natural logarithm of P(evidence), known causes included; 0 if there is none. */
    public double logEvidence(GivenEvidence evidence) {
        return solve(evidence).logEvidence();
    }

    /** Chance that at least one cause of a set is present; 0 for the empty set. */
    public double anyOf(Set<Integer> causes, GivenEvidence evidence) {
        causes.forEach(this::refuseUnknownCause);
        return new AnyOf(solve(evidence), causes).chance();
    }

    /** How much each report weighs for each of some causes; no rows if nothing telling is reported. */
    public ReportWeights weights(GivenEvidence evidence, int[] causesOfInterest) {
        IntStream.of(causesOfInterest).forEach(this::refuseUnknownCause);
        return new WeighReports(solve(evidence)).forCauses(causesOfInterest);
    }

    /**
     * What looking at each of some findings can be expected to tell, in the order given.
     *
     * @throws IllegalArgumentException also if a finding is already reported present or absent for certain; one reported
     *     as unsure may be asked about: the gain is then that of a sure second look
     */
    public List<Gain> gains(GivenEvidence evidence, int[] candidateFindings) {
        var solved = solve(evidence);
        IntStream.of(candidateFindings).forEach(f -> refuseUnlessAskable(f, solved.observed));
        var expect = new ExpectGain(solved);
        return IntStream.of(candidateFindings).mapToObj(expect::of).toList();
    }

    /**
     * Expected gain about the whole set of causes from looking at one finding, bits: never less than the gain about any
     * single cause.
     *
     * @throws IllegalArgumentException also if the finding is already reported present or absent for certain
     * @throws TooDense also if more than 16 causes are linked to the finding
     */
    public double jointGain(GivenEvidence evidence, int finding) {
        var solved = solve(evidence);
        refuseUnlessAskable(finding, solved.observed);
        return new JointGain(solved, finding).bits();
    }

    private Solved solve(GivenEvidence evidence) {
        var before = latest;
        if (before != null && before.evidence.equals(evidence)) {
            return before;
        }
        var observed = new Observed(network, evidence);
        var plan = before != null && before.plan.suits(observed) ? before.plan : Plan.of(observed, statesAllowed);
        var solved = new Solved(evidence, observed, plan);
        latest = solved;
        return solved;
    }

    private void refuseUnknownCause(int cause) {
        if (cause < 0 || cause >= network.causes()) {
            throw new IllegalArgumentException(
                    "cause " + cause + ": there are " + network.causes() + " causes, from index 0.");
        }
    }

    private void refuseUnlessAskable(int finding, Observed observed) {
        if (finding < 0 || finding >= network.findings()) {
            throw new IllegalArgumentException(
                    "finding " + finding + ": there are " + network.findings() + " findings, from index 0.");
        }
        if (observed.isCertain(finding)) {
            throw new IllegalArgumentException("finding " + finding
                    + " is already reported for certain: ask about findings not looked at or unsure.");
        }
    }
}
