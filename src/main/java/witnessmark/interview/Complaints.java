package witnessmark.interview;

import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import witnessmark.gearbox.Layout;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.search.FindEntries;
import witnessmark.knowledge.search.Hit;

/** The findings that the words of a complaint may mean, to be confirmed by whoever said them. */
public final class Complaints {
    private static final int SHOWN = 8;
    private static final int USUAL = 12;
    /** What fits at least by this part of the best fits well; judgement, tried on a dozen complaints. */
    private static final double FITS_WELL = 0.5;
    /** The same for a symptom and for what was done: whoever complains tells these first. */
    private static final double TOLD_FITS_WELL = 0.25;
    /** Words that say that something is amiss, but not what. */
    private static final Pattern VAGUE = Pattern.compile(
            "\\b(wrong|feels?|felt|just|something|somehow|bad|funny|strange|problem|trouble|fault)\\b",
            Pattern.CASE_INSENSITIVE);

    private final KnowledgeBase knowledge;
    private final FindEntries search;
    private final Layout gearbox;

    public Complaints(KnowledgeBase knowledge, FindEntries search, Layout gearbox) {
        this.knowledge = knowledge;
        this.search = search;
        this.gearbox = gearbox;
    }

    /**
     * The ids of the findings that the words come nearest to: what fits well, best fit first; then, where a symptom fits best,
     * those that its causes bring along with it; then what fits badly.
     */
    public List<String> meantBy(String words) {
        List<Hit> hits = search.find(VAGUE.matcher(words).replaceAll(" "), 4 * SHOWN).stream()
                .filter(hit -> hit.kind() == Hit.Kind.FINDING)
                .filter(hit -> fits(finding(hit)) && isTold(finding(hit)))
                .toList();
        if (hits.isEmpty()) {
            return List.of();
        }
        double best = hits.get(0).score();
        return Stream.of(
                        hits.stream()
                                .filter(hit -> hit.score() >= best * enough(finding(hit)))
                                .map(Hit::id),
                        comingWith(finding(hits.get(0))),
                        hits.stream().map(Hit::id))
                .flatMap(Function.identity())
                .distinct()
                .limit(SHOWN)
                .toList();
    }

    private static double enough(Finding finding) {
        return finding.kind() == Finding.Kind.SYMPTOM || finding.kind() == Finding.Kind.ACCOUNT
                ? TOLD_FITS_WELL
                : FITS_WELL;
    }

    private Finding finding(Hit hit) {
        return knowledge.findings().get(hit.id());
    }

    /** The symptoms that the causes of a symptom bring along with it, most often first; none for anything else. */
    private Stream<String> comingWith(Finding symptom) {
        return symptom.kind() != Finding.Kind.SYMPTOM
                ? Stream.empty()
                : knowledge.findings().values().stream()
                        .filter(f -> f.kind() == Finding.Kind.SYMPTOM && fits(f))
                        .filter(f -> together(symptom.id(), f.id()) > 0)
                        .sorted(Comparator.comparingDouble((Finding f) -> -together(symptom.id(), f.id())))
                        .map(Finding::id);
    }

    private double together(String one, String other) {
        return knowledge.causesOf(one).stream()
                .filter(c -> c.applicability().reasonAgainst(gearbox).isEmpty())
                .mapToDouble(c -> c.prior() * strength(c, one) * strength(c, other))
                .sum();
    }

    /** The ids of the symptoms that the causes of this gearbox bring in most often. */
    public List<String> usual() {
        return knowledge.findings().values().stream()
                .filter(f -> f.kind() == Finding.Kind.SYMPTOM && fits(f))
                .sorted(Comparator.comparingDouble((Finding f) -> -frequency(f.id())))
                .limit(USUAL)
                .map(Finding::id)
                .toList();
    }

    private double frequency(String finding) {
        return knowledge.causesOf(finding).stream()
                .filter(c -> c.applicability().reasonAgainst(gearbox).isEmpty())
                .mapToDouble(c -> c.prior() * strength(c, finding))
                .sum();
    }

    private static double strength(Cause cause, String finding) {
        return cause.links().stream()
                .filter(l -> l.finding().equals(finding))
                .mapToDouble(Cause.Link::strength)
                .sum();
    }

    private boolean fits(Finding finding) {
        return finding.applicability().reasonAgainst(gearbox).isEmpty();
    }

    /** Whether somebody may bring it along in words: a driver, a paper, or a shop that had the gearbox open. */
    private static boolean isTold(Finding finding) {
        return switch (finding.kind()) {
            case SYMPTOM, PAPER, ACCOUNT, SIGN, MARK, LOOK -> true;
            case READING, LOG, COMPUTED -> false;
        };
    }
}
