package witnessmark.diagnosis.fact;

/** From the knowledge base: where the finding is present, this is to be said beside a cause that names people. */
public record Says(String finding, String text) {}
