package witnessmark.jobcard;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.Wording;

/** The things that a clause is about: what is said behind one of them is said of it, and of no other. */
final class Subjects {
    private static final double WHOLE = 0.96;

    private final List<Match> named;
    private final Map<String, Finding> findings;

    /** Of a clause in which these phrases were found. */
    Subjects(List<Match> matches, Map<String, Finding> findings) {
        this.findings = findings;
        this.named = matches.stream().filter(Subjects::isName).toList();
    }

    private static boolean isName(Match match) {
        Phrase.Names names = match.phrase().names();
        boolean inOneRun = match.last() - match.first() + 1 == match.at().size() && match.turned() == 0;
        return inOneRun && match.covered() >= WHOLE && (names == Phrase.Names.PART || names == Phrase.Names.WORK);
    }

    /** What governs a match. */
    enum Rule {
        /** Nothing but what it names itself. */
        OWN,
        /** Another part of the gearbox or about it. */
        ANOTHER,
        /** A thing of which nothing is said about the gearbox. */
        ELSEWHERE
    }

    /** What the clause begins with, by its longest name. */
    Optional<Match> first() {
        return named.stream().filter(n -> n.first() == 0).max(Comparator.comparingInt(n -> n.at().size()));
    }

    /** What the match is said of, as the clause has it. */
    Rule of(Match match, Polarity polarity, List<Term> terms) {
        List<Match> before = new ArrayList<>();
        for (Match name : named) {
            boolean other = name.phrase().of() == Wording.Of.OTHER;
            if (other && name.at().size() > 1 && name.at().stream().anyMatch(match.at()::contains)) {
                return Rule.ELSEWHERE;
            }
            boolean apart = name.at().stream().noneMatch(match.at()::contains);
            if (apart && name.last() < match.first() && !polarity.broken(name, match, terms)) {
                before.add(name);
            }
        }
        if (before.stream().anyMatch(n -> n.phrase().of() == Wording.Of.OTHER)) {
            return Rule.ELSEWHERE;
        }
        boolean namesItself = named.stream()
                .anyMatch(n -> n.phrase().of() != Wording.Of.OTHER && match.at().containsAll(n.at()));
        return before.isEmpty() || namesItself || before.stream().anyMatch(n -> isOf(n, match))
                ? Rule.OWN
                : Rule.ANOTHER;
    }

    /** Whether the part is looked at for the same finding, or for one of the same system. */
    private boolean isOf(Match name, Match match) {
        Finding looked = findings.get(name.phrase().id());
        Finding said = findings.get(match.phrase().id());
        if (match.turned() > 0 && looked != said) {
            // Its words stand there in another order, so that they may be said of the part: "breather blows oil".
            return false;
        }
        return said == null || looked != null && looked.system().equals(said.system());
    }
}
