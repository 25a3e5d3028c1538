package witnessmark.diagnosis.fact;

/**
 * From the knowledge base: the cause leaves this on the parts or in how they work.
 *
 * @param own whether hardly anything else leaves it
 */
public record MarkOf(String cause, String finding, boolean own) {}
