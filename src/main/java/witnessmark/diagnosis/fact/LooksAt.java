package witnessmark.diagnosis.fact;

/** From the knowledge base: the finding, present, shows the state that the cause is, seen or measured. */
public record LooksAt(String cause, String finding) {}
