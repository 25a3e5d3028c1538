package witnessmark.diagnosis.fact;

/** Seen on the parts, and not left by the cause or its owner: another owner's cause may have been at work. */
public record UnexplainedMark(String cause, String finding) {}
