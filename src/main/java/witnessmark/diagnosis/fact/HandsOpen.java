package witnessmark.diagnosis.fact;

/**
 * From the knowledge base: where the finding is present, it is open whose doing it was.
 *
 * @param of the class, or the one cause, of which it is open
 */
public record HandsOpen(String finding, String of) {}
