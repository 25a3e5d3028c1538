package witnessmark.inference;

import java.util.List;

/** The evidence has probability 0: no set of causes can give it. */
public final class ImpossibleEvidence extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<Integer> findings;

    ImpossibleEvidence(List<Integer> findings) {
        super("No set of causes can give what was reported of findings " + findings
                + " with the causes known: withdraw one of these reports or known causes.");
        this.findings = List.copyOf(findings);
    }

    /** The reported findings among which the contradiction lies, by index; empty if known causes alone contradict. */
    public List<Integer> findings() {
        return findings;
    }
}
