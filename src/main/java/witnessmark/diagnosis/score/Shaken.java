package witnessmark.diagnosis.score;

/**
 * How often the answer moved when the numbers of the knowledge base were moved.
 *
 * @param what which numbers were moved, and how
 * @param trials judgements made
 * @param firstChanged how often another cause came first
 * @param verdictChanged how often the verdict changed
 */
public record Shaken(String what, int trials, int firstChanged, int verdictChanged) {}
