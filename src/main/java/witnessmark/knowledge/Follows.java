package witnessmark.knowledge;

/** Where {@code premise} is present, {@code conclusion} cannot be absent. */
public record Follows(String premise, String conclusion, String why) {}
