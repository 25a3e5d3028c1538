package witnessmark.diagnosis.fact;

/** Something the reader should know about how the evidence was taken. */
public record Remark(String text) {}
