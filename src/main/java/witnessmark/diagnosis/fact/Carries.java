package witnessmark.diagnosis.fact;

/** From the knowledge base: the finding is nearly specific to the cause and may carry a conclusion to it. */
public record Carries(String cause, String finding) {}
