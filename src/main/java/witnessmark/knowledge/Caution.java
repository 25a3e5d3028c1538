package witnessmark.knowledge;

/** A caution in both languages. */
public record Caution(String id, String english, String spanish) implements BothLanguages {}
