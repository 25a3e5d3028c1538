package witnessmark.diagnosis.fact;

/** From the knowledge base: the finding, present, multiplies the odds of the cause by a factor below one. */
public record SpeaksAgainst(String cause, String finding, double factor, String why) {}
