package witnessmark.diagnosis.fact;

/** From the knowledge base: a measure outside its limit on one side means this finding. */
public record Yields(String measure, Side side, String finding) {

    /** Which limit is meant. */
    public enum Side {
        BELOW,
        ABOVE
    }
}
