package witnessmark.diagnosis.fact;

/** From the knowledge base: the other cause leaves the same marks as the cause; {@code tells} says what decides. */
public record Rival(String cause, String other, String tells) {}
