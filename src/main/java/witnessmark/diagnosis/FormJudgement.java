package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.diagnosis.fact.Believed;
import witnessmark.diagnosis.fact.HeldBack;
import witnessmark.diagnosis.fact.HoldReason;
import witnessmark.diagnosis.fact.Leans;
import witnessmark.diagnosis.fact.OddsChange;
import witnessmark.diagnosis.fact.Unexplaining;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.LookAlike;

/** Puts the judgement together from the reading of the network and what the rules allow to be said of it. */
final class FormJudgement {
    private final String caseId;
    private final NetworkReading reading;
    private final KnowledgeBase knowledge;
    private final Titles titles;
    private final Sentences say;
    private final Weights weights;
    private final List<Cause> ranked;
    private final Conclusions conclusions;
    private final FindRivals rivals;
    private final ExplainSymptoms symptoms;
    private final Map<String, List<PartSeen.Explained>> explained = new LinkedHashMap<>();
    /** The checks of a pair of look-alikes that are still to be asked; each pair is met from both its causes. */
    private final Map<LookAlike, List<String>> openChecks = new IdentityHashMap<>();

    FormJudgement(String caseId, NetworkReading reading, RuleSession session, KnowledgeBase knowledge) {
        this.caseId = caseId;
        this.reading = reading;
        this.knowledge = knowledge;
        this.titles = new Titles(knowledge);
        this.say = new Sentences(knowledge.language());
        this.weights = new Weights(reading, knowledge);
        this.rivals = new FindRivals(reading, knowledge);
        this.symptoms = new ExplainSymptoms(reading);
        knowledge.causes().values().stream()
                .filter(c -> reading.isInQuestion(c.id()) && rivals.isSeen(c))
                .forEach(c -> explained.put(c.id(), symptoms.by(c)));
        this.ranked = knowledge.causes().values().stream()
                .filter(c -> reading.isInQuestion(c.id()))
                .sorted(Comparator.comparingDouble((Cause c) -> -answers(c)).thenComparing(Cause::id))
                .toList();
        this.conclusions = session.conclusions(believed(), weighed());
    }

    /** The judgement; the checks ahead are left to whoever knows where the hands are. */
    Judgement judgement() {
        List<RankedCause> causes =
                ranked.stream().map(this::standing).map(this::withReasons).toList();
        List<Judgement.ClassShare> attribution = attribution();
        return new Judgement(
                caseId,
                new ReachVerdict(knowledge, titles).verdict(causes, attribution, marks()),
                causes,
                attribution,
                parts(),
                reading.premises().contradictions().stream()
                        .map(c -> new Judgement.Conflict(c.findings(), titles.fill(c.why())))
                        .toList(),
                changes(),
                List.of(),
                new GiveAdvice(knowledge, titles).advice(conclusions.given()),
                ShareLookedAt.of(reading),
                remarks());
    }

    /** The verdict alone, without reasons, checks and advice. */
    Verdict verdict() {
        return new ReachVerdict(knowledge, titles)
                .verdict(ranked.stream().map(this::standing).toList(), attribution(), marks());
    }

    /** How well the cause answers the complaint: its probability, less where it was seen and explains nothing. */
    private double answers(Cause cause) {
        List<PartSeen.Explained> by = explained.get(cause.id());
        double explains = by == null || by.isEmpty() ? 1 : by.get(0).probability();
        return reading.probability(cause.id()) * (1 + explains) / 2;
    }

    private List<Believed> believed() {
        List<Believed> believed = new ArrayList<>();
        for (int rank = 1; rank <= ranked.size(); rank++) {
            Cause cause = ranked.get(rank - 1);
            double probability = reading.probability(cause.id());
            if (probability >= Thresholds.WORTH_A_WORD) {
                String classId = reading.classOf(cause.id());
                believed.add(new Believed(
                        cause.id(), classId, knowledge.classOf(classId).blames(), probability, rank));
            }
        }
        return believed;
    }

    /** What the rules hear of the network besides the beliefs. */
    private List<Object> weighed() {
        List<Object> weighed = new ArrayList<>(leans());
        ranked.stream()
                .filter(c -> reading.probability(c.id()) >= Thresholds.LEADS)
                .forEach(c -> {
                    weighed.addAll(rivals.of(c));
                    weighed.addAll(rivals.beside(c));
                    weighed.addAll(rivals.unexplained(c));
                });
        explained.forEach((cause, by) -> {
            if (!by.isEmpty() && by.get(0).probability() < Thresholds.EXPLAINS) {
                weighed.add(new Unexplaining(
                        cause, by.stream().map(PartSeen.Explained::symptom).toList()));
            }
        });
        return weighed;
    }

    private List<Leans> leans() {
        if (reading.premises().contradictions().isEmpty()) {
            return List.of();
        }
        List<Leans> leans = new ArrayList<>();
        for (Believed b : believed()) {
            Stream.concat(weights.raising(b.cause()).stream(), weights.lowering(b.cause()).stream())
                    .forEach(w -> leans.add(new Leans(b.cause(), w.finding(), w.decibans())));
        }
        return leans;
    }

    private List<String> marks() {
        return reading.taken().keySet().stream()
                .filter(reading::isPresent)
                .filter(f -> reading.kind(f) == Finding.Kind.LOOK || reading.kind(f) == Finding.Kind.MARK)
                .toList();
    }

    private List<PartSeen> parts() {
        return reading.taken().keySet().stream()
                .filter(f -> reading.isPresent(f) && reading.kind(f) == Finding.Kind.LOOK)
                .map(this::part)
                .toList();
    }

    private PartSeen part(String finding) {
        List<Cause> reasons = ranked.stream()
                .filter(c -> c.links().stream().anyMatch(l -> l.finding().equals(finding)))
                .filter(c -> reading.probability(c.id()) >= Thresholds.WORTH_BELIEVING)
                .toList();
        return new PartSeen(
                finding,
                knowledge.findings().get(finding).title(),
                reasons.stream()
                        .map(c -> new PartSeen.Reason(
                                c.id(), c.title(), reading.classOf(c.id()), reading.probability(c.id())))
                        .toList(),
                reasons.stream()
                        .findFirst()
                        .map(c -> explained.containsKey(c.id()) ? explained.get(c.id()) : symptoms.by(c))
                        .orElse(List.of()));
    }

    private RankedCause standing(Cause cause) {
        double probability = reading.probability(cause.id());
        List<HoldReason> reasons = conclusions.heldBack().stream()
                .filter(h -> h.cause().equals(cause.id()))
                .map(HeldBack::why)
                .distinct()
                .toList();
        return new RankedCause(
                cause.id(),
                cause.title(),
                reading.classOf(cause.id()),
                probability,
                standing(probability, isWhole(cause, probability), reasons.isEmpty()),
                rivals.isSeen(cause),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                reasons,
                reasons.stream().map(say::held).map(titles::fill).distinct().toList());
    }

    private RankedCause withReasons(RankedCause bare) {
        Cause cause = knowledge.causes().get(bare.id());
        return new RankedCause(
                bare.id(),
                bare.title(),
                bare.classId(),
                bare.probability(),
                bare.standing(),
                bare.seen(),
                weights.raising(cause.id()),
                weights.lowering(cause.id()),
                unchecked(cause),
                lookAlikes(cause),
                bare.reasons(),
                bare.heldBack());
    }

    /** Whether the chance suffices: a part that was seen so may share it with what else brings about the same, of one owner. */
    private boolean isWhole(Cause cause, double probability) {
        return probability >= Thresholds.CONCLUDED
                || probability >= Thresholds.LEADS
                        && rivals.isSeen(cause)
                        && attribution().stream()
                                .anyMatch(share -> share.classId().equals(reading.classOf(cause.id()))
                                        && share.probability() >= Thresholds.POINTS_TO_UNLED);
    }

    private static RankedCause.Standing standing(double probability, boolean whole, boolean free) {
        if (whole) {
            return free ? RankedCause.Standing.CONCLUDED : RankedCause.Standing.HELD_BACK;
        }
        if (probability >= 0.5) {
            return RankedCause.Standing.LIKELY;
        }
        return probability >= Thresholds.WORTH_A_WORD ? RankedCause.Standing.POSSIBLE : RankedCause.Standing.UNLIKELY;
    }

    private List<String> unchecked(Cause cause) {
        return cause.links().stream()
                .filter(l -> l.strength() >= Thresholds.EXPECTED
                        && !reading.taken().containsKey(l.finding())
                        && reading.canBeFound(l.finding()))
                .sorted(Comparator.comparingDouble((Cause.Link l) -> -l.strength()))
                .map(Cause.Link::finding)
                .toList();
    }

    private List<RankedCause.Rivalry> lookAlikes(Cause cause) {
        CauseNetwork network = reading.network();
        return network.rivals(network.cause(cause.id())).stream()
                .filter(rival -> reading.applies(rival.other()))
                .map(rival -> {
                    Cause other = network.causes().get(rival.other());
                    return new RankedCause.Rivalry(
                            other.id(),
                            other.title(),
                            reading.probability(rival.other()),
                            rival.pair().tells(),
                            openChecks.computeIfAbsent(rival.pair(), pair -> pair.checks().stream()
                                    .filter(reading::isToBeAsked)
                                    .toList()));
                })
                .sorted(Comparator.comparingDouble((RankedCause.Rivalry r) -> -r.probability())
                        .thenComparing(RankedCause.Rivalry::cause))
                .toList();
    }

    private List<Judgement.ClassShare> attribution() {
        Set<String> carried = ranked.stream()
                .filter(c -> reading.probability(c.id()) >= Thresholds.WORTH_A_WORD)
                .map(c -> reading.classOf(c.id()))
                .collect(Collectors.toSet());
        return knowledge.vocabulary().classes().stream()
                .filter(c -> carried.contains(c.id()))
                .map(c -> new Judgement.ClassShare(c.id(), c.title(), reading.classProbability(c.id())))
                .sorted(Comparator.comparingDouble((Judgement.ClassShare s) -> -s.probability()))
                .toList();
    }

    private List<Judgement.Change> changes() {
        List<Judgement.Change> changes = new ArrayList<>();
        reading.oddsChanges()
                .forEach(c -> changes.add(new Judgement.Change(c.target(), c.finding(), titles.fill(odds(c)))));
        reading.premises()
                .classChanges()
                .forEach(c -> changes.add(new Judgement.Change(
                        c.cause(),
                        c.finding(),
                        titles.fill(say.say(
                                "change-class",
                                c.cause(),
                                knowledge.classOf(c.classId()).title(),
                                c.finding())))));
        reading.premises().notApplicable().stream()
                .filter(n -> n.subject() == witnessmark.diagnosis.fact.Applies.Subject.CAUSE)
                .forEach(n -> changes.add(new Judgement.Change(
                        n.id(), "", titles.fill(say.say("change-not-applicable", n.id(), n.why())))));
        return List.copyOf(changes);
    }

    private String odds(OddsChange c) {
        return switch (c.kind()) {
            case CAUSE -> say.say("change-odds-cause", c.target(), factor(c.factor()), c.finding(), c.why());
            case CLASS -> say.say(
                    "change-odds-class",
                    knowledge.classOf(c.target()).title(),
                    factor(c.factor()),
                    c.finding(),
                    c.why());
        };
    }

    private static String factor(double factor) {
        return factor == Math.rint(factor) ? String.valueOf((long) factor) : String.valueOf(factor);
    }

    private List<String> remarks() {
        Set<String> remarks = new LinkedHashSet<>();
        conclusions.remarks().forEach(r -> remarks.add(titles.fill(r.text())));
        return List.copyOf(remarks);
    }
}
