package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import witnessmark.diagnosis.fact.Applies;
import witnessmark.diagnosis.fact.Breeds;
import witnessmark.diagnosis.fact.Carries;
import witnessmark.diagnosis.fact.ClassTurn;
import witnessmark.diagnosis.fact.Given;
import witnessmark.diagnosis.fact.MustBeGood;
import witnessmark.diagnosis.fact.Needs;
import witnessmark.diagnosis.fact.Rival;
import witnessmark.diagnosis.fact.SpeaksAgainst;
import witnessmark.diagnosis.fact.Suggests;
import witnessmark.diagnosis.fact.Warns;
import witnessmark.diagnosis.fact.Yields;
import witnessmark.knowledge.Applicability;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.LookAlike;

/**
 * The knowledge base cut into facts and sorted by what they are about, so that a session learns only what its case
 * touches.
 */
final class KnowledgeFacts {
    private final List<Object> ofLayout = new ArrayList<>();
    private final Map<String, List<Object>> byFinding = new HashMap<>();
    private final Map<String, List<Object>> byMeasure = new HashMap<>();
    private final Map<String, List<Object>> byCause = new HashMap<>();

    KnowledgeFacts(KnowledgeBase knowledge) {
        knowledge.causes().values().forEach(cause -> {
            if (!cause.applicability().equals(Applicability.ANY)) {
                ofLayout.add(new Applies(Applies.Subject.CAUSE, cause.id(), cause.applicability()));
            }
            ofCause(cause);
        });
        knowledge.findings().values().forEach(finding -> {
            if (!finding.applicability().equals(Applicability.ANY)) {
                ofLayout.add(new Applies(Applies.Subject.FINDING, finding.id(), finding.applicability()));
            }
            finding.needs().forEach(condition -> about(byFinding, finding.id(), new Needs(finding.id(), condition)));
            warn(finding);
        });
        knowledge.neverTogether().forEach(n -> n.findings().forEach(f -> about(byFinding, f, n)));
        knowledge.follows().forEach(f -> {
            about(byFinding, f.premise(), f);
            about(byFinding, f.conclusion(), f);
        });
        knowledge.context().forEach(effect -> about(byFinding, effect.finding(), effect));
        knowledge.measures().values().forEach(measure -> {
            measure.below().ifPresent(f -> measured(measure.id(), Yields.Side.BELOW, f));
            measure.above().ifPresent(f -> measured(measure.id(), Yields.Side.ABOVE, f));
        });
        knowledge.lookAlikes().forEach(this::ofPair);
    }

    /** Facts that hold whatever was reported. */
    List<Object> ofLayout() {
        return ofLayout;
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

    private void ofCause(Cause cause) {
        String id = cause.id();
        cause.classWhen().forEach(w -> about(byFinding, w.finding(), new ClassTurn(id, w.finding(), w.classId())));
        cause.against()
                .forEach(a -> about(byFinding, a.finding(), new SpeaksAgainst(id, a.finding(), a.factor(), a.why())));
        cause.specificFindings().forEach(f -> about(byCause, id, new Carries(id, f)));
        cause.provedGood().forEach(f -> about(byCause, id, new MustBeGood(id, f)));
        cause.breeds().forEach(other -> about(byCause, id, new Breeds(id, other)));
        advise(id, Given.Kind.REPAIR, cause.repair());
        advise(id, Given.Kind.COACHING, cause.coaching());
        advise(id, Given.Kind.TOWING, cause.towing());
        advise(id, Given.Kind.CAUTION, cause.cautions());
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

    private void ofPair(LookAlike pair) {
        about(byCause, pair.first(), new Rival(pair.first(), pair.second(), pair.tells()));
        about(byCause, pair.second(), new Rival(pair.second(), pair.first(), pair.tells()));
    }

    private void measured(String measure, Yields.Side side, String finding) {
        about(byMeasure, measure, new Yields(measure, side, finding));
        byFinding.getOrDefault(finding, List.of()).forEach(fact -> about(byMeasure, measure, fact));
    }

    private static void about(Map<String, List<Object>> map, String id, Object fact) {
        map.computeIfAbsent(id, key -> new ArrayList<>()).add(fact);
    }
}
