package witnessmark.knowledge.search;

/**
 * A cause, finding or page that fits the words.
 *
 * @param score how well it fits; only the order means anything
 */
public record Hit(Kind kind, String id, String title, double score) {

    /** What was found. */
    public enum Kind {
        CAUSE,
        FINDING,
        PAGE
    }
}
