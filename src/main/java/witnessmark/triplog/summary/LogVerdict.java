package witnessmark.triplog.summary;

import witnessmark.triplog.event.EventKind;

/**
 * What a log says of one kind of event. Only "not seen though possible" counts against a habit.
 *
 * @param state seen, not seen though it could have been, or not to be seen in this log
 * @param count events found
 * @param chances how often it could have happened, in the unit of the kind's chance (100 km for distance)
 * @param reason why it cannot be seen, or what "not seen" rests on
 */
public record LogVerdict(EventKind kind, State state, long count, double chances, String reason) {
    /** The three answers. */
    public enum State {
        SEEN("seen"),
        NOT_SEEN_THOUGH_POSSIBLE("not seen, though it could have been"),
        CANNOT_BE_SEEN("cannot be seen in this log");

        private final String words;

        State(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
