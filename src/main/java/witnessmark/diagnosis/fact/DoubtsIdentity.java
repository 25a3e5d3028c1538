package witnessmark.diagnosis.fact;

/** From the knowledge base: the finding, present, puts in doubt that the evidence is from one unit. */
public record DoubtsIdentity(String finding) {}
