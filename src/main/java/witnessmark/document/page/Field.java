package witnessmark.document.page;

/** A named value. */
public record Field(String label, String value) {}
