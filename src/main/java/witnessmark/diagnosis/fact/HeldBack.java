package witnessmark.diagnosis.fact;

/** Why a cause may not be concluded yet, and which finding or cause stands in the way. */
public record HeldBack(String cause, String obstacle, String why) {}
