package witnessmark.diagnosis.fact;

/**
 * The odds of a cause, or of each cause of a class, are multiplied for this case, because of one finding.
 *
 * @param target id of a cause or of a class
 */
public record OddsChange(Target kind, String target, double factor, String finding, String why) {

    /** Whether one cause is meant or a class. */
    public enum Target {
        CAUSE,
        CLASS
    }
}
