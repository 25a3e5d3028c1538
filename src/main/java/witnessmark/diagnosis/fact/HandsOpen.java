package witnessmark.diagnosis.fact;

/** From the knowledge base: where the finding is present, it is open whose doing what is of this class was. */
public record HandsOpen(String finding, String classId) {}
