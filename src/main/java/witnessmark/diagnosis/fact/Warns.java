package witnessmark.diagnosis.fact;

/** From the knowledge base: the finding, once found, calls for this caution; {@code place} is its place in the list. */
public record Warns(String finding, String caution, int place) {}
