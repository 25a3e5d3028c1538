package witnessmark.diagnosis.fact;

import witnessmark.casefile.FindingState;

/** A finding as the technician, the driver's papers or a computation reported it. */
public record Reported(String finding, FindingState state) {}
