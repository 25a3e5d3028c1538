package witnessmark.diagnosis.fact;

/**
 * From the knowledge base: the cause leaves this on the parts or in how they work.
 *
 * @param own whether hardly anything else leaves it
 * @param measured whether it is a figure that was read, not a trace
 */
public record MarkOf(String cause, String finding, boolean own, boolean measured) {}
