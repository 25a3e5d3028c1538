package witnessmark.jobcard;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.casefile.FindingState;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Wording;

/** Takes a job card's own sentences, English or Spanish, for findings and values; what it does not take it hands back. */
public final class ReadJobCard {
    private static final double WHOLE = 0.96;
    private static final double NEARLY = 0.85;
    /** Among more words than this, one word alone may mean anything. */
    private static final int FEW = 2;

    private final KnowledgeBase knowledge;
    private final Phrases phrases;
    private final Figures figures;

    public ReadJobCard(KnowledgeBase knowledge) {
        this.knowledge = knowledge;
        this.phrases = new Phrases(knowledge);
        this.figures = new Figures(knowledge.measures());
    }

    /** As {@link #read(String, Layout, Unit)}, distances without a unit in kilometres. */
    public Reading read(String card, Layout gearbox) {
        return read(card, gearbox, Unit.KILOMETRE);
    }

    /**
     * What the card says of this gearbox; nothing proposed and nothing left over for an empty card.
     *
     * @param distance kilometre or mile, for an odometer written without a unit
     */
    public Reading read(String card, Layout gearbox, Unit distance) {
        Map<String, Proposal> proposals = new LinkedHashMap<>();
        List<String> left = new ArrayList<>();
        for (String sentence : Pieces.sentences(card)) {
            Optional<Sayer> sayer = Sayer.of(CardWords.letters(sentence));
            List<String> clauses = Pieces.clauses(sentence);
            for (int i = 0; i < clauses.size(); i++) {
                boolean goodBehind = clauses.subList(i + 1, clauses.size()).stream()
                        .anyMatch(c -> new Polarity(CardWords.letters(c)).isGood());
                List<Proposal> found = new ArrayList<>(clause(clauses.get(i), sayer, goodBehind, gearbox));
                found.replaceAll(p -> p instanceof Proposal.OfFinding f ? afterTheLook(f, proposals) : p);
                Odometer.in(clauses.get(i), distance).ifPresent(found::add);
                if (found.isEmpty()) {
                    left.add(clauses.get(i));
                }
                found.forEach(p -> proposals.merge(p.id(), p, ReadJobCard::surer));
            }
        }
        return new Reading(List.copyOf(proposals.values()), left);
    }

    /** Said twice: the surer; said both ways: neither is sure. */
    private static Proposal surer(Proposal one, Proposal other) {
        if (one instanceof Proposal.OfFinding a && other instanceof Proposal.OfFinding b && a.state() != b.state()) {
            return new Proposal.OfFinding(
                    a.id(),
                    FindingState.UNSURE,
                    a.words() + " / " + b.words(),
                    Sureness.DOUBTFUL,
                    a.saidBy().or(b::saidBy),
                    a.when());
        }
        return one.sureness().compareTo(other.sureness()) <= 0 ? one : other;
    }

    /** Work told of behind the look that it would have spoiled did not spoil it. */
    private Proposal afterTheLook(Proposal.OfFinding said, Map<String, Proposal> before) {
        boolean looked = knowledge.findings().get(said.id()).renews().stream()
                .anyMatch(f -> before.containsKey(f)
                        || knowledge.measures().values().stream()
                                .anyMatch(m -> before.containsKey(m.id())
                                        && (m.below().equals(Optional.of(f))
                                                || m.above().equals(Optional.of(f)))));
        return looked ? said.atBest(Sureness.DOUBTFUL) : said;
    }

    private List<Proposal> clause(String clause, Optional<Sayer> sayer, boolean goodBehind, Layout gearbox) {
        String plain = CardWords.letters(clause);
        Polarity polarity = new Polarity(plain);
        List<Term> terms = phrases.words().typed(clause);
        if (polarity.isNotDone() || terms.isEmpty()) {
            return List.of();
        }
        List<Match> matches = phrases.in(terms).stream()
                .filter(m ->
                        m.phrase().of() == Wording.Of.MEASURE || fits(m.phrase().id(), gearbox))
                // What is said nearly whole is not shut out by the half of something longer.
                .sorted(Comparator.comparing(m -> m.covered() < NEARLY))
                .toList();
        List<Proposal> work =
                polarity.isWork() && !polarity.isMaybe() ? work(clause, matches, terms, sayer) : List.of();
        List<Proposal> values = figures.in(clause, matches);
        if (!values.isEmpty()) {
            return Stream.concat(work.stream(), values.stream()).toList();
        }
        List<Proposal> found = new ArrayList<>();
        List<Match> taken = new ArrayList<>();
        for (Match match : matches) {
            boolean sound = match.phrase().names() == Phrase.Names.SOUND;
            List<Term> open = without(terms, taken);
            if (!match.phrase().saysFinding() && !(sound && isPlainly(match, polarity, open))) {
                continue;
            }
            if (taken.stream()
                    .anyMatch(t -> t.saysTheSameAs(match)
                            || t.phrase().id().equals(match.phrase().id()))) {
                continue;
            }
            taken.add(match);
            found.add(sound ? absent(clause, match, sayer, true) : said(clause, polarity, match, matches, open, sayer));
        }
        boolean good = polarity.isGood() && !isGoodOf(taken, polarity, terms)
                || goodBehind && found.stream().allMatch(p -> p.sureness() == Sureness.DOUBTFUL);
        boolean saysNo = taken.stream()
                .anyMatch(
                        m -> m.covered() >= WHOLE && m.phrase().terms().stream().anyMatch(Term::isNot));
        if (good && !saysNo && !polarity.isWork() && !polarity.isBefore() && !polarity.isMaybe()) {
            List<Proposal> sound = sound(clause, matches, sayer, polarity.isGood());
            if (!sound.isEmpty()) {
                return sound;
            }
        }
        found.addAll(0, work);
        return found;
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
                .filter(m -> m.covered() >= WHOLE && m.phrase().names() == Phrase.Names.IT)
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

    private Proposal said(
            String clause,
            Polarity polarity,
            Match match,
            List<Match> matches,
            List<Term> terms,
            Optional<Sayer> sayer) {
        Sureness sureness = match.covered() >= WHOLE && match.exact()
                ? Sureness.SURE
                : match.covered() >= NEARLY ? Sureness.LIKELY : Sureness.DOUBTFUL;
        boolean rivalled = matches.stream()
                .anyMatch(m -> m.phrase().saysFinding()
                        && !m.phrase().id().equals(match.phrase().id())
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
                || (polarity.isGood() && !own && !isGoodOf(List.of(match), polarity, terms))) {
            state = FindingState.UNSURE;
            sureness = Sureness.DOUBTFUL;
        }
        return new Proposal.OfFinding(
                match.phrase().id(), state, clause, sureness, sayer, GearWords.in(CardWords.letters(clause)));
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

    /** The findings whose part is said to be good. */
    private static List<Proposal> sound(String clause, List<Match> matches, Optional<Sayer> sayer, boolean here) {
        Map<String, Proposal> sound = new LinkedHashMap<>();
        List<Match> wider = new ArrayList<>();
        for (Match match : matches) {
            boolean part =
                    match.phrase().of() == Wording.Of.FINDING && match.phrase().names() == Phrase.Names.PART;
            boolean within = wider.stream()
                    .anyMatch(w -> w.at().containsAll(match.at())
                            && w.at().size() > match.at().size());
            if (part && match.covered() >= NEARLY && !within) {
                wider.add(match);
                sound.putIfAbsent(match.phrase().id(), absent(clause, match, sayer, here));
            }
        }
        return List.copyOf(sound.values());
    }

    private static Proposal absent(String clause, Match match, Optional<Sayer> sayer, boolean here) {
        Sureness sureness = here && match.covered() >= WHOLE && match.exact() ? Sureness.SURE : Sureness.LIKELY;
        return new Proposal.OfFinding(match.phrase().id(), FindingState.ABSENT, clause, sureness, sayer, "");
    }
}
