package witnessmark.jobcard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.casefile.FindingState;
import witnessmark.gearbox.Layout;

/** Reads the clauses of a sentence, each with what the others say of it. */
final class ReadSentence {
    /** What is left when everything said has been set apart: "only 4th jumps out, rest ok". */
    private static final Pattern THE_REST = Pattern.compile("\\b(rest|others?|demas|otras?)\\b");

    /** Where a clause tells since when: what stands before it is a complaint of its own. */
    private static final Pattern SINCE = Pattern.compile(
            "\\b(?:ever since|since|desde|after (?:(?:the|a|its|last) )?(?:rebuil|repair|overhaul)|(?:despues|luego) de (?:la |una )?repara)",
            Pattern.CASE_INSENSITIVE);

    private final List<Piece> pieces = new ArrayList<>();

    /** A clause and what it was taken to say. */
    record Piece(String words, List<Proposal> found) {}

    ReadSentence(String sentence, CardTerms words, ReadClause reader, Layout gearbox) {
        Optional<Sayer> sayer = Sayer.of(CardTerms.letters(sentence));
        List<String> clauses = Pieces.clauses(sentence);
        Optional<String> subject = Optional.empty();
        for (int i = 0; i < clauses.size(); i++) {
            List<String> later = clauses.subList(i + 1, clauses.size());
            boolean goodBehind = later.stream().anyMatch(c -> polarity(c).isGood());
            Clause clause = new Clause(clauses.get(i), sayer, words.typed(beside(later)), goodBehind);
            Optional<String> own = reader.subject(clauses.get(i));
            List<Proposal> found = reader.read(clause, gearbox);
            boolean isOpen = found.stream().allMatch(p -> p.sureness() == Sureness.DOUBTFUL);
            if (isOpen && own.isEmpty() && subject.isPresent()) {
                found = of(subject.get(), clause, reader, gearbox);
            }
            pieces.add(new Piece(clauses.get(i), withTheComplaint(found, clause, reader, gearbox)));
            subject = own.isPresent() ? own : subject;
        }
        for (int i = 0; i < pieces.size(); i++) {
            weaken(i);
        }
    }

    List<Piece> pieces() {
        return List.copyOf(pieces);
    }

    /** With what is plain before "since the rebuild": the repair alone is not what the truck came for. */
    private static List<Proposal> withTheComplaint(
            List<Proposal> found, Clause clause, ReadClause reader, Layout gearbox) {
        Matcher since = SINCE.matcher(clause.words());
        if (!since.find()) {
            return found;
        }
        List<Proposal> both = new ArrayList<>(found);
        reader.read(clause.only(clause.words().substring(0, since.start()).strip()), gearbox).stream()
                .filter(p -> p.sureness() == Sureness.SURE)
                .filter(p -> found.stream().noneMatch(f -> f.id().equals(p.id()) && f.sureness() == Sureness.SURE))
                .forEach(p -> {
                    both.removeIf(f -> f.id().equals(p.id()));
                    both.add(p);
                });
        return both;
    }

    /** What a clause without a subject says of the one before it. */
    private List<Proposal> of(String subject, Clause clause, ReadClause reader, Layout gearbox) {
        return reader.read(clause.of(subject), gearbox).stream()
                .filter(p -> !isSaid(p.id()))
                .map(p -> p.atBest(Sureness.LIKELY))
                .toList();
    }

    /** Whether the sentence has said something of it: "front u-joint loose, the other good" takes nothing back. */
    private boolean isSaid(String id) {
        return pieces.stream().flatMap(p -> p.found().stream()).anyMatch(p -> p.id().equals(id));
    }

    private static Polarity polarity(String clause) {
        return new Polarity(CardTerms.letters(clause));
    }

    private static String beside(List<String> later) {
        return String.join(
                " ",
                later.stream().takeWhile(c -> ReadFigures.values(c).isEmpty()).toList());
    }

    /** What the clauses that led to nothing leave open of this one. */
    private void weaken(int at) {
        Piece piece = pieces.get(at);
        List<Proposal> found = new ArrayList<>(piece.found());
        for (int i = 0; i < pieces.size(); i++) {
            if (i == at || !pieces.get(i).found().isEmpty()) {
                continue;
            }
            String other = CardTerms.letters(pieces.get(i).words());
            Polarity polarity = new Polarity(other);
            boolean isBehind = i > at;
            if (isBehind && polarity.isMaybe()) {
                found.replaceAll(p -> p instanceof Proposal.OfFinding f ? f.unsure() : p);
            } else if (isBehind && polarity.isGood() && !THE_REST.matcher(other).find()) {
                found.replaceAll(p -> in(p, FindingState.PRESENT));
            } else if (isBehind && polarity.isBad()) {
                found.replaceAll(
                        p -> p instanceof Proposal.OfFinding f && f.state() == FindingState.ABSENT ? f.unsure() : p);
            } else if (!polarity.isGood()) {
                found.replaceAll(p -> in(p, FindingState.ABSENT));
            }
        }
        pieces.set(at, new Piece(piece.words(), found));
    }

    /** What is not understood may take back what is said of the part in this state. */
    private static Proposal in(Proposal proposal, FindingState state) {
        return proposal instanceof Proposal.OfFinding f && f.state() == state ? f.atBest(Sureness.LIKELY) : proposal;
    }
}
