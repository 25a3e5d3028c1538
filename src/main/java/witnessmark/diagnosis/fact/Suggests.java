package witnessmark.diagnosis.fact;

/** From the knowledge base: the cause, if believed, gives this piece of advice; {@code place} is its place in the list. */
public record Suggests(String cause, Given.Kind kind, String text, int place) {}
