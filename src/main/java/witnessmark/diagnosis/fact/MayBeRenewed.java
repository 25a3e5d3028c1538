package witnessmark.diagnosis.fact;

/**
 * From the knowledge base: a cause stands on {@code good} found sound, which {@code renewed} would leave saying nothing;
 * the premise gives reason to ask.
 */
public record MayBeRenewed(String cause, String good, String renewed, String premise) {}
