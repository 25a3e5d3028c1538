package witnessmark.diagnosis.fact;

/** From the knowledge base: the cause is concluded only where this finding was answered absent. */
public record MustBeGood(String cause, String finding) {}
