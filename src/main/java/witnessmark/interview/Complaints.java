package witnessmark.interview;

import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
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

    /** The ids of the findings that the words come nearest to, best fit first. */
    public List<String> meantBy(String words) {
        return search.find(VAGUE.matcher(words).replaceAll(" "), 4 * SHOWN).stream()
                .filter(hit -> hit.kind() == Hit.Kind.FINDING)
                .map(hit -> knowledge.findings().get(hit.id()))
                .filter(f -> fits(f) && isTold(f))
                .limit(SHOWN)
                .map(Finding::id)
                .toList();
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
