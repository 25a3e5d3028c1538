package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import witnessmark.diagnosis.fact.Beside;
import witnessmark.diagnosis.fact.Instead;
import witnessmark.diagnosis.fact.UnexplainedMark;
import witnessmark.inference.ExactInference;
import witnessmark.inference.GivenEvidence;
import witnessmark.inference.Posterior;
import witnessmark.inference.Report;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.LookAlike;

/**
 * Asks of a cause that leads: had it not happened, what else would have left these parts so? A log, a paper or a tale
 * that speaks for the cause is left aside, for it must not stand in for a look at the other. A rival is closed where it
 * was looked at and found sound, where the check that parts the two was made and speaks against it, or where it is
 * improbable even so.
 */
final class FindRivals {
    private final NetworkReading reading;
    private final KnowledgeBase knowledge;
    private final CauseNetwork network;
    private @Nullable ExactInference evenHanded;

    FindRivals(NetworkReading reading, KnowledgeBase knowledge) {
        this.reading = reading;
        this.knowledge = knowledge;
        this.network = reading.network();
    }

    /** The rivals still open, most probable first; empty where nothing found goes with the cause. */
    List<Instead> of(Cause cause) {
        List<String> shared = carrying(cause);
        if (shared.isEmpty()) {
            return List.of();
        }
        Posterior without = evenHanded().posterior(hadItNotHappened(cause));
        List<Instead> rivals = new ArrayList<>();
        for (Cause other : knowledge.causes().values()) {
            double probability = without.of(network.cause(other.id()));
            if (probability >= Thresholds.RIVAL_IN_THE_SAME_BREAK
                    && probability >= least(cause, other)
                    && !isOfOneOwner(other, cause)
                    && explains(other, cause, shared)
                    && !isClosed(cause, other)) {
                Instead rival = new Instead(
                        cause.id(),
                        other.id(),
                        probability,
                        isSeenApart(other, cause),
                        isSeenApart(other, cause) || isWitnessed(other, cause),
                        pair(cause, other).map(LookAlike::tells).orElse(""),
                        looks(cause, other));
                if (!isOutweighed(cause, other, rival)) {
                    rivals.add(rival);
                }
            }
        }
        if (bearing(cause, shared).stream().anyMatch(f -> rivals.stream()
                .noneMatch(r -> strength(knowledge.causes().get(r.other()), f) > 0))) {
            rivals.removeIf(r -> !r.spokenFor());
        }
        rivals.sort(Comparator.comparingDouble((Instead i) -> -i.probability()).thenComparing(Instead::other));
        return rivals;
    }

    /**
     * Causes of another owner that are as likely as a conclusion beside it, and beside one that names a shop or the maker
     * also what is neither shown nor ruled out and would explain the complaint: both may be true, but what came of which is
     * not told by the parts. One that has nothing in common with it stands apart, each with a complaint of its own; people
     * are not named even so. What the cause itself brings about, and a trifle that explains no complaint, only stand beside.
     */
    List<Beside> beside(Cause cause) {
        double least = blames(cause) || !names(cause) ? Thresholds.CONCLUDED : Thresholds.OPEN_BESIDE;
        return knowledge.causes().values().stream()
                .filter(other -> reading.isInQuestion(other.id())
                        && reading.probability(other.id()) >= least
                        && !isOfOneOwner(other, cause)
                        && isWorthALook(other)
                        && (blames(cause) || !isBredBy(cause, other) && !standApart(cause, other)))
                .map(other -> new Beside(cause.id(), other.id(), isShown(other), looks(cause, other)))
                .toList();
    }

    private boolean isShown(Cause cause) {
        return reading.probability(cause.id()) >= Thresholds.CONCLUDED;
    }

    /**
     * What was seen on the parts that neither the cause nor anything likely of its owner leaves, and something of another
     * owner does, so that another story is in it. What says that a part is in order tells none.
     */
    List<UnexplainedMark> unexplained(Cause cause) {
        return reading.taken().keySet().stream()
                .filter(reading::isPresent)
                .filter(f -> reading.kind(f) == Finding.Kind.LOOK || reading.kind(f) == Finding.Kind.MARK)
                .filter(f -> !knowledge.findings().get(f).inOrder() && strength(cause, f) == 0)
                .filter(f -> leavers(f)
                        .noneMatch(other -> isOfOneOwner(other, cause)
                                && reading.probability(other.id()) >= Thresholds.WORTH_A_WORD))
                .filter(f -> leavers(f).anyMatch(other -> !isOfOneOwner(other, cause) && !other.harmsNothing()))
                .map(f -> new UnexplainedMark(cause.id(), f))
                .toList();
    }

    private Stream<Cause> leavers(String finding) {
        return knowledge.causes().values().stream()
                .filter(other -> reading.isInQuestion(other.id()) && strength(other, finding) > 0);
    }

    private boolean isOfOneOwner(Cause one, Cause other) {
        return reading.classOf(one.id()).equals(reading.classOf(other.id()));
    }

    /** Whether the other came of the cause, by what is on record of the two, and not as well the other way round. */
    private static boolean isBredBy(Cause cause, Cause other) {
        return cause.breeds().contains(other.id()) && !other.breeds().contains(cause.id());
    }

    /** Whether it may have done it: a trifle only where it explains what the truck does, what is possible also what is seen outside. */
    private boolean isWorthALook(Cause other) {
        return isShown(other)
                ? !other.harmsNothing() || left(other).anyMatch(f -> reading.kind(f) == Finding.Kind.SYMPTOM)
                : complaints(other).findAny().isPresent();
    }

    private boolean standApart(Cause cause, Cause other) {
        return left(cause).noneMatch(f -> strength(other, f) > 0)
                && complaints(cause).anyMatch(f -> strength(other, f) == 0)
                && complaints(other).anyMatch(f -> strength(cause, f) == 0);
    }

    /** What was found of what the cause leaves, in the parts or in what the truck does. */
    private Stream<String> left(Cause cause) {
        return cause.links().stream()
                .map(Cause.Link::finding)
                .filter(reading::isPresent)
                .filter(f -> reading.kind(f).isPhysical() || reading.kind(f) == Finding.Kind.SYMPTOM);
    }

    private Stream<String> complaints(Cause cause) {
        return left(cause).filter(f -> reading.kind(f) == Finding.Kind.SYMPTOM || reading.kind(f) == Finding.Kind.SIGN);
    }

    /**
     * Whether the other explains what the cause is taken from: any of it, or, where the other was itself seen, all of it;
     * one that was seen and explains only a part stands beside, since both can be true. Against people what it leaves
     * seldom counts too: it is there, and they were not.
     */
    private boolean explains(Cause other, Cause cause, List<String> shared) {
        if (!isSeen(other)) {
            return shared.stream().anyMatch(f -> strength(other, f) > 0);
        }
        double least = blames(cause) ? Double.MIN_VALUE : Thresholds.SOMETIMES;
        return shared.stream().allMatch(f -> strength(other, f) >= least);
    }

    /**
     * What a conclusion can rest on alone: the break, the cause's own mark, else each mark that tells much for it. Where
     * no rival leaves one of these, all of them together leave it unexplained, and each of them can only stand beside; it
     * holds back only with something of its own that speaks for it, since the damage is then shared.
     */
    private List<String> bearing(Cause cause, List<String> shared) {
        List<String> own = shared.stream()
                .filter(f -> cause.links().stream().anyMatch(l -> l.finding().equals(f) && (l.look() || l.specific())))
                .toList();
        return own.isEmpty()
                ? shared.stream()
                        .filter(f -> reading.kind(f) == Finding.Kind.MARK)
                        .filter(f -> chance(cause, f)
                                >= Thresholds.BEARS
                                        * knowledge.findings().get(f).background())
                        .toList()
                : own;
    }

    /** Where all that would part the two is known for certain and nothing speaks for the other alone, the whole evidence decides. */
    private boolean isOutweighed(Cause cause, Cause other, Instead rival) {
        List<String> parting = parting(cause, other);
        return !rival.spokenFor()
                && !(blames(cause) && breaksTheSame(cause, other))
                && !parting.isEmpty()
                && parting.stream().allMatch(f -> reading.isPresent(f) || reading.isAbsent(f))
                && reading.probability(other.id()) < Thresholds.RIVAL;
    }

    /** A look-alike on record that breaks the same part is asked about however rare: that it is rare does not part them. */
    private double least(Cause cause, Cause other) {
        return pair(cause, other).isPresent() && breaksTheSame(cause, other)
                ? Thresholds.RIVAL_IN_THE_SAME_BREAK
                : Thresholds.RIVAL;
    }

    /** Whether the cause was taken from a part seen broken or from its own mark, and the other leaves that too. */
    private boolean breaksTheSame(Cause cause, Cause other) {
        return cause.links().stream()
                .filter(l -> (l.look() || l.specific()) && reading.isPresent(l.finding()))
                .filter(l -> reading.kind(l.finding()) == Finding.Kind.LOOK
                        || reading.kind(l.finding()) == Finding.Kind.MARK)
                .anyMatch(l -> strength(other, l.finding()) > 0);
    }

    private boolean names(Cause cause) {
        return knowledge.classOf(reading.classOf(cause.id())).names();
    }

    private boolean blames(Cause cause) {
        return knowledge.classOf(reading.classOf(cause.id())).blames();
    }

    /** Whether the state that the cause is was seen. */
    boolean isSeen(Cause cause) {
        return cause.links().stream().anyMatch(l -> showsIt(l, l.finding()) && reading.isPresent(l.finding()));
    }

    /** Whether it was seen in what shows the cause not at all, or by far not so surely. */
    private boolean isSeenApart(Cause other, Cause cause) {
        return other.links().stream()
                .anyMatch(l -> showsIt(l, l.finding())
                        && reading.isPresent(l.finding())
                        && strength(cause, l.finding()) * Thresholds.CLOSES_RIVAL <= l.strength());
    }

    /**
     * What a rival must explain too. For a part seen broken that is the break itself, not a symptom that comes with it;
     * else the marks, and where there are none whatever speaks for the cause and was not only told.
     */
    private List<String> carrying(Cause cause) {
        List<String> present = reading.taken().keySet().stream()
                .filter(f -> reading.isPresent(f) && strength(cause, f) > 0)
                .toList();
        List<String> shows = present.stream()
                .filter(f -> cause.links().stream().anyMatch(l -> showsIt(l, f)))
                .toList();
        if (!shows.isEmpty()) {
            return shows;
        }
        List<String> marks = present.stream()
                .filter(f -> reading.kind(f) == Finding.Kind.MARK || reading.kind(f) == Finding.Kind.LOOK)
                .toList();
        return marks.isEmpty()
                ? present.stream()
                        .filter(f -> reading.kind(f) != Finding.Kind.ACCOUNT)
                        .toList()
                : marks;
    }

    private boolean showsIt(Cause.Link link, String finding) {
        return link.finding().equals(finding)
                && (link.look() || link.specific() && reading.kind(finding) == Finding.Kind.LOOK);
    }

    /** That a rival is rare is no reason not to look at it. */
    private ExactInference evenHanded() {
        ExactInference made = evenHanded;
        if (made == null) {
            made = reading.inferenceNoRarerThan(Thresholds.RIVAL_PRIOR);
            evenHanded = made;
        }
        return made;
    }

    private GivenEvidence hadItNotHappened(Cause cause) {
        double atMost = 1 / knowledge.vocabulary().greatestRatio();
        Map<Integer, Report> reports = new TreeMap<>();
        reading.evidence().reports().forEach((index, report) -> {
            Finding finding = network.findings().get(index);
            boolean speaksForIt = reading.isPresent(finding.id()) && strength(cause, finding.id()) > 0;
            if (speaksForIt && !finding.kind().isPhysical() && finding.kind() != Finding.Kind.SYMPTOM) {
                return;
            }
            // A look that only this cause explains would leave nothing to compare: it counts as a mark here.
            reports.put(index, speaksForIt && finding.kind() == Finding.Kind.LOOK ? new Report(1, atMost) : report);
        });
        return new GivenEvidence(reports, reading.evidence().knownCauses()).withAbsent(network.cause(cause.id()));
    }

    private boolean isClosed(Cause cause, Cause other) {
        boolean foundSound = other.looks().stream().anyMatch(reading::isAbsent);
        return foundSound
                || reading.premises().oddsChanges().stream()
                        .anyMatch(c -> c.target().equals(other.id()) && c.factor() <= excludes())
                || areParted(cause, other) && !isWitnessed(other, cause);
    }

    /** Whether the checks that part them and were made, taken together, fit the cause so much better than the other. */
    private boolean areParted(Cause cause, Cause other) {
        double together = checks(cause, other).stream()
                .mapToDouble(f -> fitsBetter(f, cause, other))
                .reduce(1, (a, b) -> a * b);
        return together >= (breaksTheSame(cause, other) ? Thresholds.PARTS_THE_SAME_BREAK : Thresholds.CLOSES_RIVAL);
    }

    /** Whether somebody or something bears witness of the other that does not speak for the cause as well. */
    private boolean isWitnessed(Cause other, Cause cause) {
        return other.links().stream()
                .filter(l -> l.strength() >= Thresholds.EXPECTED || l.specific())
                .map(Cause.Link::finding)
                .filter(f -> reading.isPresent(f) && strength(cause, f) == 0)
                .map(reading::kind)
                .anyMatch(kind -> kind.isWitness() || kind == Finding.Kind.ACCOUNT);
    }

    private double excludes() {
        return knowledge.vocabulary().against().getOrDefault("excludes", 0.0);
    }

    /**
     * How many times better the answer to a check fits the cause than the other; 1 where it was not made. An account, or
     * a log against a part, may speak for the other and not for the cause; nor does the break itself where both leave it.
     */
    private double fitsBetter(String finding, Cause cause, Cause other) {
        double times = 1;
        if (reading.isPresent(finding)) {
            times = chance(cause, finding) / chance(other, finding);
            if (speaksAgainst(other, finding)) {
                times = Math.max(times, Thresholds.PARTS_THE_SAME_BREAK);
            }
        } else if (reading.isAbsent(finding)) {
            times = (1 - chance(cause, finding)) / (1 - chance(other, finding));
        }
        return canPart(finding, cause, other) ? times : Math.min(1, times);
    }

    private boolean canPart(String finding, Cause cause, Cause other) {
        Finding.Kind kind = reading.kind(finding);
        boolean personAgainstPart = !blames(other);
        boolean theBreakItself = reading.isPresent(finding)
                && strength(other, finding) > 0
                && cause.links().stream().anyMatch(l -> showsIt(l, finding));
        return !theBreakItself && kind != Finding.Kind.ACCOUNT && !(kind == Finding.Kind.LOG && personAgainstPart);
    }

    private static boolean speaksAgainst(Cause cause, String finding) {
        return cause.against().stream().anyMatch(a -> a.finding().equals(finding));
    }

    private double chance(Cause cause, String finding) {
        double background = knowledge.findings().get(finding).background();
        return 1 - (1 - background) * (1 - strength(cause, finding));
    }

    private static double strength(Cause cause, String finding) {
        return cause.links().stream()
                .filter(l -> l.finding().equals(finding))
                .mapToDouble(Cause.Link::strength)
                .findFirst()
                .orElse(0);
    }

    private Optional<LookAlike> pair(Cause cause, Cause other) {
        return network.pair(cause.id(), other.id());
    }

    /** The checks of their pair; where none is on record, whatever the other usually leaves by far more than the cause. */
    private List<String> checks(Cause cause, Cause other) {
        return pair(cause, other).map(LookAlike::checks).orElseGet(() -> other.links().stream()
                .filter(l -> l.strength() >= Thresholds.EXPECTED || l.specific())
                .filter(l -> l.strength() >= strength(cause, l.finding()) * Thresholds.CLOSES_RIVAL)
                .map(Cause.Link::finding)
                .toList());
    }

    /** What would close it and is not answered yet. */
    private List<String> looks(Cause cause, Cause other) {
        return parting(cause, other).stream().filter(reading::isToBeAsked).toList();
    }

    /** What parts the two: the looks at the other itself, and the checks between them. */
    private List<String> parting(Cause cause, Cause other) {
        return Stream.concat(other.looks().stream(), checks(cause, other).stream())
                .distinct()
                .filter(reading::canBeFound)
                .toList();
    }
}
