package witnessmark.diagnosis.fact;

/** From the knowledge base: the check behind {@code finding} counts only if {@code condition} was not answered absent. */
public record Needs(String finding, String condition) {}
