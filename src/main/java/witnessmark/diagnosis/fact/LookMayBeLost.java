package witnessmark.diagnosis.fact;

/** From the knowledge base: where {@code to} is present, the look at the cause tells nothing any more. */
public record LookMayBeLost(String cause, String to) {}
