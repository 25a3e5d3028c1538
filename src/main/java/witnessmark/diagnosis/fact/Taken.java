package witnessmark.diagnosis.fact;

/** A finding as it enters the reasoning, and from what. */
public record Taken(String finding, State state, String from) {}
