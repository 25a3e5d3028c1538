package witnessmark.interview;

import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * How often in a row the answer was that nobody looked. Whoever cannot look in a place gets no more questions there, and
 * whoever cannot look anywhere gets none: they would wear him out and tell nothing.
 *
 * @param inARow by place, how many of the last answers there were so
 * @param overall how many of the last answers were so, wherever
 */
record NotKnown(Map<String, Integer> inARow, int overall) {
    /** After so many a place is left. Judgement: enough to hear that nobody is there, few enough to bear. */
    static final int MOST_IN_A_PLACE = 4;
    /** After so many nothing more is asked: three places. */
    static final int MOST = 12;

    NotKnown {
        inARow = Map.copyOf(inARow);
    }

    Set<String> placesLeft() {
        return inARow.entrySet().stream()
                .filter(place -> place.getValue() >= MOST_IN_A_PLACE)
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }

    boolean isEnough() {
        return overall >= MOST;
    }
}
