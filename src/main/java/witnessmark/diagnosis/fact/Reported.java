package witnessmark.diagnosis.fact;

/** A finding as the technician, the driver's papers or a computation reported it. */
public record Reported(String finding, State state) {}
