package witnessmark.diagnosis.fact;

/** A finding that follows from a measured value, with the sentence that says how. */
public record FromMeasurement(String finding, State state, String measure, String why) {}
