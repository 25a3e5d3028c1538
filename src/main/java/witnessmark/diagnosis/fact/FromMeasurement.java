package witnessmark.diagnosis.fact;

import witnessmark.casefile.FindingState;

/** A finding that follows from a measured value, with the sentence that says how. */
public record FromMeasurement(String finding, FindingState state, String measure, String why) {}
