package witnessmark.diagnosis.fact;

/**
 * A cause with its probability after the inference.
 *
 * @param blames whether naming it is a statement about a person
 * @param rank 1 for the most probable
 */
public record Believed(String cause, String classId, boolean blames, double probability, int rank) {}
