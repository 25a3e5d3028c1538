package witnessmark.jobcard;

/** How well the words carry a proposal. */
public enum Sureness {
    /** The words can hardly mean anything else. */
    SURE,
    /** Nearly the words of one finding only. */
    LIKELY,
    /** Some of the words, or words that are also said of something else. */
    DOUBTFUL;

    Sureness atBest(Sureness other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
