package witnessmark.jobcard;

import java.util.LinkedHashSet;
import java.util.Set;

/**
 * A word of a text, or several that stand for one thing.
 *
 * @param stems its English and its Spanish stem, and its group of synonyms
 * @param from first character in the text
 * @param to the character after its last
 * @param spelledSo whether it stood so in the text; false for one that was taken for a misspelling
 */
record Term(Set<String> stems, int from, int to, boolean spelledSo) {
    /** Stands for every "no", "not" and "without". */
    static final String NOT = "\u00ac";

    /** The same word, taken for another thing as well. */
    Term also(Set<String> more) {
        Set<String> all = new LinkedHashSet<>(stems);
        all.addAll(more);
        return new Term(all, from, to, spelledSo);
    }

    /** In the same place, and saying nothing any more. */
    Term spent() {
        return new Term(Set.of(""), from, to, spelledSo);
    }

    boolean isNot() {
        return stems.contains(NOT);
    }

    boolean means(Term other) {
        return stems.stream().anyMatch(other.stems::contains);
    }

    boolean isAny(Set<String> words) {
        return stems.stream().anyMatch(words::contains);
    }
}
