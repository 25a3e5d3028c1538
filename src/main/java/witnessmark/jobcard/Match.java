package witnessmark.jobcard;

import java.util.Comparator;
import java.util.List;

/**
 * A phrase found in a clause.
 *
 * @param at the places of the terms that it was found in, in the order of the clause
 * @param covered share of the phrase's weight that was found, 0 to 1
 * @param exact whether every word stood there spelled so
 */
record Match(Phrase phrase, List<Integer> at, double covered, boolean exact, int turned) {
    /** What says most and is said most wholly comes first. */
    static final Comparator<Match> BEST = Comparator.comparingDouble(
                    (Match m) -> -m.phrase.weight() * m.covered * m.covered * m.covered)
            .thenComparing(Match::turned)
            .thenComparing(m -> m.phrase.id());

    int first() {
        return at.get(0);
    }

    int last() {
        return at.get(at.size() - 1);
    }

    /** Whether they rest on the same words; "oil full and clean" says two things of the oil. */
    boolean saysTheSameAs(Match other) {
        boolean bothSound = phrase.names() == Phrase.Names.SOUND && other.phrase.names() == Phrase.Names.SOUND;
        return bothSound
                ? at.containsAll(other.at) || other.at.containsAll(at)
                : at.stream().anyMatch(other.at::contains);
    }
}
