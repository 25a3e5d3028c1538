package witnessmark.diagnosis.fact;

/**
 * From the knowledge base: where {@code spoiler} is present, an answer to {@code finding} cannot be trusted.
 *
 * @param soundOnly whether only the answer "sound" cannot: the part was renewed or set before anybody looked
 */
public record SpoiledBy(String finding, String spoiler, boolean soundOnly) {}
