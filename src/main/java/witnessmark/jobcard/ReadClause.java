package witnessmark.jobcard;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import witnessmark.casefile.FindingState;
import witnessmark.gearbox.Layout;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Wording;

/** Takes one clause of a card for findings and values. */
final class ReadClause {
    private static final Pattern LOOKED_AT = Pattern.compile(
            "^\\W*(?:(?:i|we|tech|also|se|ya)\\s+)*(?:checked|rechecked|looked (?:at|over)|inspected|went over|tested"
                    + "|revis(?:e|é|o|ó|amos|aron)|cheque(?:e|é|o|ó|amos|aron)|inspeccion(?:e|é|o|ó|amos|aron))\\s+",
            Pattern.CASE_INSENSITIVE);

    private static final double WHOLE = 0.96;
    private static final double NEARLY = 0.85;
    /** Where less of a clause is accounted for, the rest may turn its sense. */
    static final double HALF = 0.5;
    /** Among more words than this, one word alone may mean anything. */
    private static final int FEW = 2;

    private final KnowledgeBase knowledge;
    private final Phrases phrases;
    private final ReadFigures figures;

    ReadClause(KnowledgeBase knowledge, Phrases phrases) {
        this.knowledge = knowledge;
        this.phrases = phrases;
        this.figures = new ReadFigures(knowledge.measures(), phrases);
    }

    /** The part that the words begin with, but for what was done to look at it; empty where they begin otherwise. */
    Optional<String> subject(String clause) {
        String words = LOOKED_AT.matcher(clause).replaceFirst("");
        List<Term> terms = phrases.words().typed(words);
        return new Subjects(phrases.in(terms), knowledge.findings())
                .first()
                .map(name -> words.substring(
                        terms.get(name.first()).from(), terms.get(name.last()).to()));
    }

    /** What the clause says of this gearbox; nothing where it says nothing that is known. */
    List<Proposal> read(Clause said, Layout gearbox) {
        String clause = said.words();
        Optional<Sayer> sayer = said.sayer();
        String plain = CardTerms.letters(clause);
        Polarity polarity = new Polarity(plain);
        List<Term> terms = phrases.words().typed(clause);
        if (polarity.isNotDone() || terms.isEmpty()) {
            return List.of();
        }
        List<Match> all = phrases.in(terms);
        Subjects subjects = new Subjects(all, knowledge.findings());
        List<Match> matches = matches(all, subjects, polarity, terms, gearbox);
        List<Proposal> work =
                polarity.isWork() && !polarity.isMaybe() ? work(clause, matches, terms, sayer) : List.of();
        List<Proposal> values = figures.in(said, terms, matches);
        List<Proposal> found = new ArrayList<>();
        List<Match> taken = new ArrayList<>();
        for (Match match : matches) {
            boolean sound = match.phrase().names() == Phrase.Names.SOUND;
            List<Term> open = without(terms, taken);
            if (!match.phrase().saysFinding() && !(sound && isPlainly(match, polarity, open))) {
                continue;
            }
            if (isTaken(match, taken, terms)) {
                continue;
            }
            taken.add(match);
            Proposal.OfFinding proposal =
                    sound ? absent(clause, match, sayer, true) : said(clause, polarity, match, matches, open, sayer);
            found.add(proposal.atBest(best(proposal, match, subjects.of(match, polarity, terms), said, terms)));
        }
        if (!values.isEmpty()) {
            return Stream.of(work, values, outright(found))
                    .flatMap(List::stream)
                    .toList();
        }
        Sureness best = accounted(terms, taken, polarity);
        found.replaceAll(p -> p.atBest(best));
        boolean good = polarity.isGood() && !isGoodOf(taken, polarity, terms)
                || said.goodBehind() && found.stream().allMatch(p -> p.sureness() == Sureness.DOUBTFUL);
        boolean saysNo = taken.stream()
                .anyMatch(
                        m -> m.covered() >= WHOLE && m.phrase().terms().stream().anyMatch(Term::isNot));
        if (good && !saysNo && !polarity.isWork() && !polarity.isBefore() && !polarity.isMaybe()) {
            List<Proposal> parts = soundParts(matches, clause, sayer, polarity, terms);
            if (!parts.isEmpty()) {
                return parts;
            }
        }
        found.addAll(0, work);
        return found;
    }

    /** What the words beside a value say by themselves, as "3 quarts low" says that the level is low. */
    private static List<Proposal> outright(List<Proposal> found) {
        return found.stream()
                .filter(p -> p.sureness() == Sureness.SURE)
                .filter(p -> p instanceof Proposal.OfFinding f && f.state() == FindingState.PRESENT)
                .toList();
    }

    /** What may be said here of this gearbox, best first. */
    private List<Match> matches(
            List<Match> all, Subjects subjects, Polarity polarity, List<Term> terms, Layout gearbox) {
        return all.stream()
                .filter(m -> m.phrase().of() != Wording.Of.OTHER)
                .filter(m ->
                        m.phrase().of() == Wording.Of.MEASURE || fits(m.phrase().id(), gearbox))
                .filter(m -> isSaidHere(m, subjects.of(m, polarity, terms)))
                // What is said nearly whole is not shut out by the half of something longer.
                .sorted(Comparator.comparing((Match m) -> m.covered() < NEARLY)
                        .thenComparing(m -> !phrases.isToldApart(m.phrase().id(), terms)))
                .toList();
    }

    /** Whether the finding, or what these words say, was taken already. */
    private boolean isTaken(Match match, List<Match> taken, List<Term> terms) {
        return taken.stream()
                .anyMatch(t -> t.phrase().id().equals(match.phrase().id())
                        || t.saysTheSameAs(match) && !areBothSound(match, t) && !isAlternative(match, t, terms));
    }

    /** The findings whose part is said to be good. */
    private List<Proposal> soundParts(
            List<Match> matches, String clause, Optional<Sayer> sayer, Polarity polarity, List<Term> terms) {
        List<Match> parts = soundParts(matches, terms);
        Sureness sure = polarity.isGood() ? accounted(terms, parts, polarity) : Sureness.LIKELY;
        return parts.stream()
                .map(m -> absent(clause, m, sayer, polarity.isGood()).atBest(sure))
                // "U joints good, rear one dry" in one breath: which of the two is meant must be asked.
                .map(f -> (Proposal) (polarity.isBad() ? f.unsure() : f))
                .toList();
    }

    /** How sure a clause can be of which so much is accounted for by what was found, and by words that call it good. */
    private Sureness accounted(List<Term> terms, List<Match> found, Polarity polarity) {
        Set<Integer> places = new HashSet<>();
        found.forEach(m -> places.addAll(m.at()));
        for (int i = 0; i < terms.size(); i++) {
            if (polarity.callsGood(terms.get(i))) {
                places.add(i);
            }
        }
        return phrases.share(terms, places) < HALF ? Sureness.LIKELY : Sureness.SURE;
    }

    /** What is only near to a finding, or lacks a word of it, may be said of anything: "never changed". */
    private static boolean isSaidHere(Match match, Subjects.Rule subject) {
        return switch (subject) {
            case OWN -> true;
            case ANOTHER -> match.phrase().names() != Phrase.Names.NEAR && match.covered() >= WHOLE;
            case ELSEWHERE -> false;
        };
    }

    /** "Range quick both ways" is said of both ways. */
    private static boolean areBothSound(Match match, Match taken) {
        return match.at().equals(taken.at())
                && match.covered() >= WHOLE
                && match.phrase().names() == Phrase.Names.SOUND
                && taken.phrase().names() == Phrase.Names.SOUND;
    }

    /** Something else that the same words may mean as well. */
    private boolean isAlternative(Match match, Match taken, List<Term> terms) {
        return match.at().equals(taken.at())
                && match.covered() >= NEARLY
                && taken.phrase().saysFinding()
                && match.phrase().saysFinding()
                && !phrases.isToldApart(taken.phrase().id(), terms);
    }

    /** How sure a proposal can be by what stands beside its words. */
    private Sureness best(
            Proposal.OfFinding proposal, Match match, Subjects.Rule subject, Clause clause, List<Term> terms) {
        if (subject == Subjects.Rule.ANOTHER
                || phrases.isCalledInDoubt(match.phrase().id(), clause.with(terms))) {
            return Sureness.DOUBTFUL;
        }
        if (phrases.isToldApart(match.phrase().id(), terms)) {
            return Sureness.SURE;
        }
        // Who denies it of any time denies it of each.
        return proposal.state() == FindingState.ABSENT ? Sureness.LIKELY : Sureness.DOUBTFUL;
    }

    /** The terms, each "no" that belongs to what was taken already taken for any word: it says nothing of the rest. */
    private static List<Term> without(List<Term> terms, List<Match> taken) {
        List<Term> open = new ArrayList<>(terms);
        for (Match match : taken) {
            match.at().stream()
                    .filter(i -> terms.get(i).isNot())
                    .forEach(i -> open.set(i, terms.get(i).spent()));
        }
        return open;
    }

    /** Whether the word that sounds good belongs to what was taken: a lever that is tight in all gears is not sound. */
    private static boolean isGoodOf(List<Match> taken, Polarity polarity, List<Term> terms) {
        return taken.stream()
                .filter(m -> m.covered() >= WHOLE && m.phrase().saysFinding())
                .flatMap(m -> m.at().stream().map(terms::get))
                .anyMatch(t -> polarity.isGoodWord(t.from(), t.to()));
    }

    /** Whether it is said so, with no "no", "maybe" or "used to" about it. */
    private static boolean isPlainly(Match match, Polarity polarity, List<Term> terms) {
        return match.covered() >= WHOLE
                && !polarity.isMaybe()
                && !polarity.isBefore()
                && !polarity.isWork()
                && polarity.negated(match, terms) == Polarity.Reach.NOT;
    }

    private boolean fits(String finding, Layout gearbox) {
        return knowledge
                .findings()
                .get(finding)
                .applicability()
                .reasonAgainst(gearbox)
                .isEmpty();
    }

    private Proposal.OfFinding said(
            String clause,
            Polarity polarity,
            Match match,
            List<Match> matches,
            List<Term> terms,
            Optional<Sayer> sayer) {
        Sureness sureness =
                match.covered() >= WHOLE && match.exact() && match.phrase().names() == Phrase.Names.IT
                        ? Sureness.SURE
                        : match.covered() >= NEARLY ? Sureness.LIKELY : Sureness.DOUBTFUL;
        boolean rivalled = matches.stream()
                .anyMatch(m -> m.phrase().saysFinding()
                        && !m.phrase().id().equals(match.phrase().id())
                        && phrases.isToldApart(m.phrase().id(), terms)
                        && m.at().equals(match.at())
                        && m.covered() >= match.covered());
        Polarity.Reach reach = polarity.negated(match, terms);
        FindingState state = reach == Polarity.Reach.REACHES ? FindingState.ABSENT : FindingState.PRESENT;
        boolean oneWordOfMany = match.at().size() == 1 && terms.size() > FEW;
        if (rivalled || match.at().size() == 1) {
            sureness = sureness.atBest(rivalled || oneWordOfMany ? Sureness.DOUBTFUL : Sureness.LIKELY);
        }
        // What was mended was there before.
        if (polarity.isWork() && !isHistory(match)) {
            sureness = sureness.atBest(Sureness.LIKELY);
        }
        boolean own = match.phrase().terms().stream().anyMatch(Term::isNot);
        if (polarity.isMaybe()
                || (polarity.isBefore() && !isHistory(match))
                || reach == Polarity.Reach.PERHAPS
                || reach == Polarity.Reach.NOT
                        && polarity.isGood()
                        && !own
                        && !isGoodOf(List.of(match), polarity, terms)) {
            state = FindingState.UNSURE;
            sureness = Sureness.DOUBTFUL;
        }
        return new Proposal.OfFinding(
                match.phrase().id(), state, clause, sureness, sayer, GearNamed.in(CardTerms.letters(clause)));
    }

    /** Whether it tells of work done, so that "replaced" and "last month" belong to it. */
    private boolean isHistory(Match match) {
        Finding.Kind kind = knowledge.findings().get(match.phrase().id()).kind();
        return kind == Finding.Kind.PAPER || kind == Finding.Kind.ACCOUNT;
    }

    /** The work done on parts that were still to be looked at. */
    private static List<Proposal> work(String clause, List<Match> matches, List<Term> terms, Optional<Sayer> sayer) {
        Map<String, Proposal> done = new LinkedHashMap<>();
        for (Match match : matches) {
            if (match.phrase().names() == Phrase.Names.WORK && match.covered() >= NEARLY) {
                boolean alone = match.at().size() > 1 || terms.size() <= FEW + 1;
                boolean whole = match.covered() >= WHOLE && match.exact();
                Sureness sureness = whole && alone ? Sureness.SURE : Sureness.LIKELY;
                done.putIfAbsent(
                        match.phrase().id(),
                        new Proposal.OfFinding(match.phrase().id(), FindingState.PRESENT, clause, sureness, sayer, ""));
            }
        }
        return List.copyOf(done.values());
    }

    /** The parts that are said to be good, the longest name of each, one for each finding; not what other words make another's. */
    private List<Match> soundParts(List<Match> matches, List<Term> terms) {
        Map<String, Match> sound = new LinkedHashMap<>();
        List<Match> wider = new ArrayList<>();
        for (Match match : matches) {
            boolean part =
                    match.phrase().of() == Wording.Of.FINDING && match.phrase().names() == Phrase.Names.PART;
            boolean within = wider.stream()
                    .anyMatch(w -> w.at().containsAll(match.at())
                            && w.at().size() > match.at().size());
            if (part
                    && match.covered() >= NEARLY
                    && !within
                    && !phrases.isCalledInDoubt(match.phrase().id(), terms)) {
                wider.add(match);
                sound.putIfAbsent(match.phrase().id(), match);
            }
        }
        return List.copyOf(sound.values());
    }

    private static Proposal.OfFinding absent(String clause, Match match, Optional<Sayer> sayer, boolean here) {
        boolean oneWord = match.at().size() == 1 && match.phrase().names() == Phrase.Names.SOUND;
        Sureness sureness =
                here && match.covered() >= WHOLE && match.exact() && !oneWord ? Sureness.SURE : Sureness.LIKELY;
        return new Proposal.OfFinding(match.phrase().id(), FindingState.ABSENT, clause, sureness, sayer, "");
    }
}
