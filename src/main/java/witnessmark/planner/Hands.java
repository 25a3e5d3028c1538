package witnessmark.planner;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Where the hands are and what is open already.
 *
 * @param open ids of the access steps that are open
 * @param at the access step of the check last made; empty before the first
 */
public record Hands(Set<String> open, Optional<String> at) {
    public Hands {
        open = Set.copyOf(open);
    }

    /** Nothing is open, nobody has begun. */
    public static Hands off() {
        return new Hands(Set.of(), Optional.empty());
    }

    /** The hands after going to a place: all on the way to it stands open. */
    public Hands movedTo(String place, List<String> way) {
        Set<String> more = new HashSet<>(open);
        more.addAll(way);
        return new Hands(more, Optional.of(place));
    }
}
