package witnessmark.diagnosis.fact;

/** From the knowledge base: where {@code to} is present, a look at the cause tells nothing any more. */
public record LookMayBeLost(String cause, String look, String to) {}
