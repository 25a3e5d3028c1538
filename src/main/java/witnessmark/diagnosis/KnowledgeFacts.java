package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import witnessmark.diagnosis.fact.Applies;
import witnessmark.diagnosis.fact.Breeds;
import witnessmark.diagnosis.fact.ClassTurn;
import witnessmark.diagnosis.fact.DoubtsIdentity;
import witnessmark.diagnosis.fact.Given;
import witnessmark.diagnosis.fact.HandsOpen;
import witnessmark.diagnosis.fact.LooksAt;
import witnessmark.diagnosis.fact.MarkOf;
import witnessmark.diagnosis.fact.MayBeRenewed;
import witnessmark.diagnosis.fact.MustBeGood;
import witnessmark.diagnosis.fact.MustBeGoodAny;
import witnessmark.diagnosis.fact.Needs;
import witnessmark.diagnosis.fact.NotByDefault;
import witnessmark.diagnosis.fact.OwnerMayTurn;
import witnessmark.diagnosis.fact.OwnerTurnsOn;
import witnessmark.diagnosis.fact.Says;
import witnessmark.diagnosis.fact.SpeaksAgainst;
import witnessmark.diagnosis.fact.SpoiledBy;
import witnessmark.diagnosis.fact.Suggests;
import witnessmark.diagnosis.fact.Warns;
import witnessmark.diagnosis.fact.WhyItIsSo;
import witnessmark.diagnosis.fact.WitnessOf;
import witnessmark.diagnosis.fact.WouldShow;
import witnessmark.diagnosis.fact.Yields;
import witnessmark.gearbox.Layout;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.Follows;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.MadeOf;
import witnessmark.knowledge.Vocabulary;

/**
 * The knowledge base cut into facts and sorted by what they are about, so that a session learns only what its case
 * touches.
 */
final class KnowledgeFacts {
    /** So that what is kept stays small, whatever is asked. */
    private static final int MOST_LAYOUTS = 100;

    private final List<Applies> limits = new ArrayList<>();
    private final Map<String, List<Object>> byFinding = new HashMap<>();
    private final Map<String, List<Object>> byMeasure = new HashMap<>();
    private final Map<String, List<Object>> byCause = new HashMap<>();
    /** The limits that a layout touches: there are few layouts, and every case asks anew. */
    private final Map<Layout, List<Applies>> byLayout = new ConcurrentHashMap<>();

    KnowledgeFacts(KnowledgeBase knowledge) {
        Spoilers spoilers = new Spoilers(knowledge);
        knowledge.causes().values().forEach(cause -> {
            if (!cause.applicability().isOfAny()) {
                limits.add(new Applies(Applies.Subject.CAUSE, cause.id(), cause.applicability()));
            }
            ofCause(cause, knowledge);
        });
        knowledge.findings().values().forEach(finding -> {
            if (!finding.applicability().isOfAny()) {
                limits.add(new Applies(Applies.Subject.FINDING, finding.id(), finding.applicability()));
            }
            finding.needs().forEach(condition -> about(byFinding, finding.id(), new Needs(finding.id(), condition)));
            warn(finding);
            for (SpoiledBy spoiled : spoilers.of(finding.id())) {
                about(byFinding, finding.id(), spoiled);
                about(byFinding, spoiled.spoiler(), spoiled);
            }
            if (!finding.says().isEmpty()) {
                about(byFinding, finding.id(), new Says(finding.id(), finding.says()));
            }
            if (finding.doubtsIdentity()) {
                about(byFinding, finding.id(), new DoubtsIdentity(finding.id()));
            }
            finding.handsOpen().forEach(of -> about(byFinding, finding.id(), new HandsOpen(finding.id(), of)));
            finding.notByDefault().forEach(of -> about(byFinding, finding.id(), new NotByDefault(finding.id(), of)));
        });
        knowledge.neverTogether().forEach(n -> n.findings().forEach(f -> about(byFinding, f, n)));
        knowledge.explainedBy().forEach(e -> {
            about(byFinding, e.finding(), e);
            e.by().forEach(f -> about(byFinding, f, e));
        });
        knowledge.follows().forEach(f -> {
            about(byFinding, f.premise(), f);
            about(byFinding, f.conclusion(), f);
        });
        knowledge.oneFacts().forEach(fact -> fact.findings().forEach(f -> about(byFinding, f, fact)));
        knowledge.context().forEach(effect -> about(byFinding, effect.finding(), effect));
        knowledge.findings().values().forEach(f -> f.madeOf().ifPresent(this::made));
        knowledge.measures().values().forEach(measure -> {
            measure.below().ifPresent(f -> measured(measure.id(), Yields.Side.BELOW, f));
            measure.above().ifPresent(f -> measured(measure.id(), Yields.Side.ABOVE, f));
        });
    }

    /** The limits of causes and findings that this layout touches, whatever was reported. */
    List<Applies> ofLayout(Layout layout) {
        if (byLayout.size() > MOST_LAYOUTS) {
            byLayout.clear();
        }
        return byLayout.computeIfAbsent(layout, asked -> limits.stream()
                .filter(limit -> limit.to().reasonAgainst(asked).isPresent())
                .toList());
    }

    List<Object> aboutFinding(String finding) {
        return byFinding.getOrDefault(finding, List.of());
    }

    /** What follows from a measure, and all that is known about the findings that follow. */
    List<Object> aboutMeasure(String measure) {
        return byMeasure.getOrDefault(measure, List.of());
    }

    List<Object> aboutCause(String cause) {
        return byCause.getOrDefault(cause, List.of());
    }

    /** What is made of others is known once they are, with all that is known about it. */
    private void made(MadeOf made) {
        List<Object> about = List.copyOf(aboutFinding(made.finding()));
        made.present().forEach(member -> {
            about(byFinding, member, made);
            about.forEach(fact -> about(byFinding, member, fact));
        });
    }

    private void ofRenewal(String cause, String good, KnowledgeBase knowledge) {
        for (Follows follows : knowledge.follows()) {
            if (knowledge.findings().get(follows.premise()).renews().contains(good)) {
                about(byCause, cause, new MayBeRenewed(cause, good, follows.premise(), follows.conclusion()));
            }
        }
    }

    /** The looks at the cause itself; its own marks where there are none. */
    private static List<String> showing(Cause cause) {
        return cause.looks().isEmpty()
                ? cause.links().stream()
                        .filter(Cause.Link::specific)
                        .map(Cause.Link::finding)
                        .toList()
                : cause.looks();
    }

    private void ofCause(Cause cause, KnowledgeBase knowledge) {
        String id = cause.id();
        for (int order = 0; order < cause.classWhen().size(); order++) {
            Cause.ClassWhen turn = cause.classWhen().get(order);
            about(
                    byFinding,
                    turn.finding(),
                    new ClassTurn(
                            id, knowledge.findings().get(turn.finding()), turn.classId(), order, knowledge.findings()));
            if (turn.classId().equals(cause.classId())) {
                continue; // it is theirs already, unless another circumstance is known
            }
            List<String> conclusions = conclusions(turn.finding(), knowledge);
            if (turn.asked() == Cause.Asked.NEVER) {
                continue;
            }
            if (isAskedFor(knowledge.findings().get(turn.finding()).kind(), knowledge.classOf(cause.classId()))) {
                about(byCause, id, new OwnerMayTurn(id, turn.finding(), turn.classId(), conclusions));
            }
            conclusions.forEach(then -> about(byCause, id, new OwnerTurnsOn(id, turn.finding(), then, turn.classId())));
            if (turn.asked() == Cause.Asked.ONCE_SEEN) {
                showing(cause)
                        .forEach(
                                seen -> about(byCause, id, new OwnerTurnsOn(id, turn.finding(), seen, turn.classId())));
            }
        }
        whyItIsSo(cause, knowledge);
        cause.against()
                .forEach(a -> about(byFinding, a.finding(), new SpeaksAgainst(id, a.finding(), a.factor(), a.why())));
        cause.links().forEach(link -> ofLink(cause, link, knowledge.findings().get(link.finding())));
        List<Object> shown = List.copyOf(aboutCause(id));
        boolean hasLooks = shown.stream().anyMatch(LooksAt.class::isInstance);
        for (Object fact : shown) {
            if (fact instanceof LooksAt look) {
                about(byCause, id, new WouldShow(id, look.finding()));
            } else if (!hasLooks && fact instanceof MarkOf mark) {
                about(byCause, id, new WouldShow(id, mark.finding()));
            }
        }
        cause.provedGood().forEach(f -> {
            about(byCause, id, new MustBeGood(id, f));
            ofRenewal(id, f, knowledge);
        });
        cause.provedGoodAny().forEach(any -> {
            about(byCause, id, new MustBeGoodAny(id, any));
            any.forEach(f -> ofRenewal(id, f, knowledge));
        });
        cause.breeds().forEach(other -> about(byCause, id, new Breeds(id, other)));
        advise(id, Given.Kind.REPAIR, cause.repair());
        advise(id, Given.Kind.COACHING, cause.coaching());
        advise(id, Given.Kind.TOWING, cause.towing());
        advise(id, Given.Kind.CAUTION, cause.cautions());
    }

    /**
     * Whether the class stands only once this was asked: papers and questions whoever answers for it, parts only where it is
     * a person. A symptom is complained of unasked, a log and a reckoning say it themselves.
     */
    private void whyItIsSo(Cause cause, KnowledgeBase knowledge) {
        if (!cause.asksWhy()) {
            return;
        }
        List<String> asked = cause.classWhen().stream()
                .filter(turn ->
                        turn.asked() != Cause.Asked.NEVER && !turn.classId().equals(cause.classId()))
                .map(Cause.ClassWhen::finding)
                .filter(f -> knowledge.findings().get(f).madeOf().isEmpty())
                .toList();
        List<String> answeredBy = cause.classWhen().stream()
                .map(Cause.ClassWhen::finding)
                .flatMap(f -> Stream.concat(Stream.of(f), conclusions(f, knowledge).stream()))
                .distinct()
                .toList();
        about(byCause, cause.id(), new WhyItIsSo(cause.id(), asked, answeredBy));
    }

    private static boolean isAskedFor(Finding.Kind kind, Vocabulary.CauseClass of) {
        return kind == Finding.Kind.PAPER || kind == Finding.Kind.ACCOUNT
                ? of.names()
                : kind.isPhysical() && of.blames();
    }

    /** What a finding takes with it. */
    private static List<String> conclusions(String premise, KnowledgeBase knowledge) {
        return knowledge.follows().stream()
                .filter(follows -> follows.premise().equals(premise))
                .map(Follows::conclusion)
                .toList();
    }

    private void ofLink(Cause cause, Cause.Link link, Finding finding) {
        boolean own = link.specific();
        if (link.look() || own && finding.kind() == Finding.Kind.LOOK) {
            about(byCause, cause.id(), new LooksAt(cause.id(), finding.id()));
        } else if (finding.kind().isPhysical() && (own || link.strength() >= Thresholds.SOMETIMES)) {
            about(
                    byCause,
                    cause.id(),
                    new MarkOf(cause.id(), finding.id(), own, finding.kind() == Finding.Kind.READING));
        } else if (finding.kind().isWitness() && (own || tellsMuch(link, finding))) {
            about(byCause, cause.id(), new WitnessOf(cause.id(), finding.id()));
        }
    }

    /** A paper that goes with many causes alike (a repair on record, the age) bears witness of none. */
    private static boolean tellsMuch(Cause.Link link, Finding finding) {
        double chance = 1 - (1 - finding.background()) * (1 - link.strength());
        return link.strength() >= Thresholds.SOMETIMES && chance >= Thresholds.WITNESSES * finding.background();
    }

    private void advise(String cause, Given.Kind kind, List<String> texts) {
        for (int place = 0; place < texts.size(); place++) {
            about(byCause, cause, new Suggests(cause, kind, texts.get(place), place));
        }
    }

    private void warn(Finding finding) {
        List<String> cautions = finding.whenFound();
        for (int place = 0; place < cautions.size(); place++) {
            about(byFinding, finding.id(), new Warns(finding.id(), cautions.get(place), place));
        }
    }

    private void measured(String measure, Yields.Side side, String finding) {
        about(byMeasure, measure, new Yields(measure, side, finding));
        byFinding.getOrDefault(finding, List.of()).forEach(fact -> about(byMeasure, measure, fact));
    }

    private static <F> void about(Map<String, List<F>> map, String id, F fact) {
        map.computeIfAbsent(id, key -> new ArrayList<>()).add(fact);
    }
}
