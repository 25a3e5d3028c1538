package witnessmark.diagnosis.fact;

/** From the knowledge base: the cause belongs to another class where this finding is present. */
public record ClassTurn(String cause, String finding, String classId) {}
