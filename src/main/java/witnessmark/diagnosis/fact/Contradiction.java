package witnessmark.diagnosis.fact;

import java.util.List;

/** Evidence that does not fit together, and why. */
public record Contradiction(List<String> findings, String why) {
    public Contradiction {
        findings = List.copyOf(findings);
    }
}
