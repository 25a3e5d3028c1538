package witnessmark.diagnosis.fact;

/** The cause's probability rests on this finding by the given weight (decibans, for or against). */
public record Leans(String cause, String finding, double decibans) {}
