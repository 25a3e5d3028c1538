package witnessmark.diagnosis.fact;

/** A finding that a measurement speaks of, although what was measured was renewed or set before, and why. */
public record DoubtedReading(String finding, String why) {}
