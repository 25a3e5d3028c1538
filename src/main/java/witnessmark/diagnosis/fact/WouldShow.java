package witnessmark.diagnosis.fact;

/** From the knowledge base: a look at the cause itself; a mark of it where it has none. */
public record WouldShow(String cause, String finding) {}
