package witnessmark.jobcard;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A clause of a card, with what its sentence says of it.
 *
 * @param words as written
 * @param behind the words of the clauses behind it, up to the next that has a value of its own
 * @param goodBehind whether one of the clauses behind it says that something is good
 */
record Clause(String words, Optional<Sayer> sayer, List<Term> behind, boolean goodBehind) {
    /** The same, said of what the clause before it was about. */
    Clause of(String subject) {
        return new Clause(subject + " \u2026 " + words, sayer, behind, goodBehind);
    }

    /** These of its words alone. */
    Clause only(String part) {
        return new Clause(part, sayer, behind, goodBehind);
    }

    /** Its own words and those behind it. */
    List<Term> with(List<Term> own) {
        return Stream.concat(own.stream(), behind.stream()).toList();
    }
}
