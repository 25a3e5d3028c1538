package witnessmark.diagnosis.fact;

/** The cause has ground in the parts: it was seen itself, or its mark was. */
public record Ground(String cause) {}
