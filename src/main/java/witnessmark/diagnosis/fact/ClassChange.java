package witnessmark.diagnosis.fact;

/** The cause belongs to another class in this case, because of a finding. */
public record ClassChange(String cause, String classId, String finding) {}
