package witnessmark.diagnosis.fact;

/** From the knowledge base: the cause stands only by exclusion, and this finding must have been answered absent. */
public record MustBeGood(String cause, String finding) {}
