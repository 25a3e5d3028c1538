package witnessmark.diagnosis.fact;

/** From the knowledge base: the cause is of another class where the finding is present, and the premise asks for it. */
public record OwnerTurnsOn(String cause, String finding, String premise, String classId) {}
