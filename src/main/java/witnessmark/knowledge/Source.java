package witnessmark.knowledge;

/** Where a statement of the knowledge base comes from. */
public record Source(String id, String title) {}
