package witnessmark.diagnosis.fact;

/** From the knowledge base: a log, a paper or a reckoning that speaks for the cause, besides the parts. */
public record WitnessOf(String cause, String finding) {}
