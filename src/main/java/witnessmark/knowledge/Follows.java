package witnessmark.knowledge;

/**
 * Where {@code premise} is present, {@code conclusion} is taken to be.
 *
 * @param always whether it cannot be absent then, so that the two contradict each other; else it is so as a rule
 */
public record Follows(String premise, String conclusion, boolean always, String why) {}
