package witnessmark.diagnosis.fact;

import witnessmark.knowledge.Applicability;

/** From the knowledge base: the layouts to which a cause or a finding can apply. */
public record Applies(Subject subject, String id, Applicability to) {

    /** What the limit is about. */
    public enum Subject {
        CAUSE,
        FINDING
    }
}
