package witnessmark.diagnosis.fact;

/** A cause or finding that this gearbox cannot have, and why. */
public record NotApplicable(Applies.Subject subject, String id, String why) {}
