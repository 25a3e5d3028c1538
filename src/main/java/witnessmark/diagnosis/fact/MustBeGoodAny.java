package witnessmark.diagnosis.fact;

import java.util.List;

/** From the knowledge base: the cause is concluded only where one of these findings was answered absent. */
public record MustBeGoodAny(String cause, List<String> findings) {
    public MustBeGoodAny {
        findings = List.copyOf(findings);
    }

    /** The ways named before this one. */
    public List<String> before(String way) {
        return findings.subList(0, findings.indexOf(way));
    }
}
