package witnessmark.diagnosis.fact;

/** Another cause, of another owner, is as likely as a conclusion beside the cause. */
public record ShownBeside(String cause, String other) {}
