package witnessmark.diagnosis.fact;

/** An answer that counts as unsure, and why. */
public record Doubted(String finding, String why) {}
