package witnessmark.diagnosis.fact;

/** From the knowledge base: the one cause can bring the other about in time. */
public record Breeds(String cause, String other) {}
