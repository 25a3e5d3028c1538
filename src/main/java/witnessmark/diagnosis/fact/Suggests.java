package witnessmark.diagnosis.fact;

/** From the knowledge base: the cause, if believed, gives this piece of advice. */
public record Suggests(String cause, Given.Kind kind, String text) {}
