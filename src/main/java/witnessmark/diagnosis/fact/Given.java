package witnessmark.diagnosis.fact;

/**
 * A piece of advice for this case.
 *
 * @param rank rank of the cause it goes with, 0 for what goes with a finding and comes first
 * @param place its place in that cause's list
 * @param text a repair note in words, or the id of a coaching point, towing reminder or caution
 * @param why the rule's reason in one sentence
 */
public record Given(Kind kind, int rank, int place, String text, String because, String why) {

    /** Which list of advice it belongs to. */
    public enum Kind {
        REPAIR,
        COACHING,
        TOWING,
        CAUTION
    }
}
