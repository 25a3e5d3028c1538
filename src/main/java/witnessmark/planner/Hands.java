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
 * @param left the access steps where checks were made before the hands went on
 */
public record Hands(Set<String> open, Optional<String> at, Set<String> left) {
    public Hands {
        open = Set.copyOf(open);
        left = Set.copyOf(left);
    }

    /** Hands that have left no place yet. */
    public Hands(Set<String> open, Optional<String> at) {
        this(open, at, Set.of());
    }

    /** Nothing is open, nobody has begun. */
    public static Hands off() {
        return new Hands(Set.of(), Optional.empty());
    }

    /** The hands after going to a place: all on the way to it stands open. */
    public Hands movedTo(String place, List<String> way) {
        Set<String> more = new HashSet<>(open);
        more.addAll(way);
        Set<String> behind = new HashSet<>(left);
        at.ifPresent(behind::add);
        behind.remove(place);
        return new Hands(more, Optional.of(place), behind);
    }
}
