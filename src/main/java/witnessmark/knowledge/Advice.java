package witnessmark.knowledge;

/** A coaching point or towing-prep reminder in both languages, with its reason (may be empty). */
public record Advice(String id, String english, String spanish, String whyEnglish, String whySpanish) {}
