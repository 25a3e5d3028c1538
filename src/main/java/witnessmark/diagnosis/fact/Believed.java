package witnessmark.diagnosis.fact;

/**
 * A cause with its probability after the inference.
 *
 * @param blames whether naming it is a statement about a person
 * @param names whether somebody answers for its class
 * @param rank 1 for the most probable
 */
public record Believed(String cause, String classId, boolean blames, boolean names, double probability, int rank) {}
