package witnessmark.diagnosis.fact;

/** A finding whose state follows from another one, so that it need not be looked at; it is no evidence of its own. */
public record Settled(String finding, State state, String by) {}
