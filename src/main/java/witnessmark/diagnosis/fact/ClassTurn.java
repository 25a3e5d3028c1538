package witnessmark.diagnosis.fact;

/** From the knowledge base: the cause belongs to another class where this finding is present; of several the first in order counts. */
public record ClassTurn(String cause, String finding, String classId, int order) {}
