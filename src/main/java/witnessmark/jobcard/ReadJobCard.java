package witnessmark.jobcard;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import witnessmark.casefile.FindingState;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.KnowledgeBase;

/** Takes a job card's own sentences, English or Spanish, for findings and values; what it does not take it hands back. */
public final class ReadJobCard {
    /** Where one of several like parts sits. */
    private static final Pattern PLACE =
            Pattern.compile("\\b(front|rear|left|right|other|delanter|traser|adelante|atras|izquierd|derech|otr[oa])");

    private final KnowledgeBase knowledge;
    private final Phrases phrases;
    private final ReadClause reader;

    public ReadJobCard(KnowledgeBase knowledge) {
        this.knowledge = knowledge;
        this.phrases = new Phrases(knowledge);
        this.reader = new ReadClause(knowledge, phrases);
    }

    /** As {@link #read(String, Layout, Unit)}, distances without a unit in kilometres. */
    public CardReading read(String card, Layout gearbox) {
        return read(card, gearbox, Unit.KILOMETRE);
    }

    /**
     * What the card says of this gearbox; nothing proposed and nothing left over for an empty card.
     *
     * @param distance kilometre or mile, for an odometer written without a unit
     */
    public CardReading read(String card, Layout gearbox, Unit distance) {
        Map<String, Proposal> proposals = new LinkedHashMap<>();
        List<String> left = new ArrayList<>();
        for (String sentence : Pieces.sentences(card)) {
            ReadSentence read = new ReadSentence(sentence, phrases.words(), reader, gearbox);
            for (ReadSentence.Piece piece : read.pieces()) {
                List<Proposal> found = new ArrayList<>(piece.found());
                found.replaceAll(p -> p instanceof Proposal.OfFinding f ? afterTheLook(f, proposals) : p);
                Odometer.in(piece.words(), distance).ifPresent(found::add);
                if (found.isEmpty()) {
                    left.add(piece.words());
                }
                found.forEach(p -> proposals.merge(key(p), p, ReadJobCard::surer));
            }
        }
        List<Proposal> all = proposals.values().stream()
                .map(p -> isReadTwice(p, proposals) ? p.atBest(Sureness.DOUBTFUL) : p)
                .toList();
        return new CardReading(all, left);
    }

    /** What is said twice is proposed once; of a value that is read twice each is. */
    private static String key(Proposal proposal) {
        if (proposal instanceof Proposal.OfMeasure m) {
            return m.id() + " " + m.value() + m.unit();
        }
        return proposal instanceof Proposal.OfOdometer o ? o.id() + " " + o.km() : proposal.id();
    }

    /** Whether the card has another value of the same: which of them counts it does not say. */
    private static boolean isReadTwice(Proposal proposal, Map<String, Proposal> all) {
        return all.values().stream().anyMatch(p -> p.id().equals(proposal.id()) && !key(p).equals(key(proposal)));
    }

    /** Said twice: the surer; said both ways: neither is sure, unless of two parts of which one is found so. */
    private static Proposal surer(Proposal one, Proposal other) {
        if (one instanceof Proposal.OfFinding a && other instanceof Proposal.OfFinding b && areOfTwoPlaces(a, b)) {
            return (a.state() == FindingState.PRESENT ? a.and(b) : b.and(a)).atBest(Sureness.LIKELY);
        }
        Proposal best = one.sureness().compareTo(other.sureness()) <= 0 ? one : other;
        if (one instanceof Proposal.OfFinding a && other instanceof Proposal.OfFinding b) {
            Proposal.OfFinding both = best == one ? a.and(b) : b.and(a);
            return a.state() == b.state() ? both : both.unsure();
        }
        return best;
    }

    /** "Front mount torn, rear mounts good": present of one place and absent of another. */
    private static boolean areOfTwoPlaces(Proposal.OfFinding one, Proposal.OfFinding other) {
        Set<FindingState> states = Set.of(FindingState.PRESENT, FindingState.ABSENT);
        Set<String> here = places(one.words());
        Set<String> there = places(other.words());
        return one.state() != other.state()
                && states.contains(one.state())
                && states.contains(other.state())
                && !here.isEmpty()
                && !there.isEmpty()
                && Collections.disjoint(here, there);
    }

    private static Set<String> places(String words) {
        return PLACE.matcher(CardTerms.letters(words))
                .results()
                .map(MatchResult::group)
                .collect(Collectors.toSet());
    }

    private static boolean isRead(String measure, Map<String, Proposal> before) {
        return before.values().stream().anyMatch(p -> p.id().equals(measure));
    }

    /** Work told of behind the look that it would have spoiled did not spoil it. */
    private Proposal afterTheLook(Proposal.OfFinding said, Map<String, Proposal> before) {
        boolean looked = knowledge.findings().get(said.id()).renews().stream()
                .anyMatch(f -> before.containsKey(f)
                        || knowledge.measures().values().stream()
                                .anyMatch(m -> isRead(m.id(), before)
                                        && (m.below().equals(Optional.of(f))
                                                || m.above().equals(Optional.of(f)))));
        return looked ? said.atBest(Sureness.DOUBTFUL) : said;
    }
}
