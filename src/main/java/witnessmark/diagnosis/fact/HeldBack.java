package witnessmark.diagnosis.fact;

/** A cause that may not be concluded yet, and why. */
public record HeldBack(String cause, HoldReason why) {}
