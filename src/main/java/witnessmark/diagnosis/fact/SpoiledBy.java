package witnessmark.diagnosis.fact;

/** From the knowledge base: where {@code spoiler} is present, an answer to {@code finding} cannot be trusted. */
public record SpoiledBy(String finding, String spoiler) {}
