package witnessmark.diagnosis.fact;

/** From the knowledge base: where the finding is present, it is open whose hands did what is of this class. */
public record HandsOpen(String finding, String classId) {}
