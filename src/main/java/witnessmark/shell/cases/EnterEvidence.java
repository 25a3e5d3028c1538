package witnessmark.shell.cases;

import java.util.List;
import java.util.function.Function;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.EvidenceSet;
import witnessmark.casefile.store.CaseChangedMeanwhile;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.knowledge.KnownIds;

/** Puts a result into a stored case, by what the case was when it was read. */
@Component
public class EnterEvidence {
    private static final int MOST_TRIES = 5;

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;

    EnterEvidence(ObjectProvider<Cases> cases, ObjectProvider<KnowledgeBase> knowledge) {
        this.cases = cases;
        this.knowledge = knowledge;
    }

    /** The case with the result in it. */
    public record Entered(CaseHistory history, Evidence evidence) {}

    /**
     * The case is not read again; only where somebody else changed it meanwhile is the result made anew, of the case as
     * it stands then.
     *
     * @param seen the case as it was read
     * @param result what is to enter it, or a refusal; every finding that it speaks of must be known
     * @param reason why a signed-off case changes; empty for an open one
     */
    public Entered enter(CaseHistory seen, Function<CaseHistory, Evidence> result, String reason) {
        CaseHistory before = seen;
        for (int tries = 1; ; tries++) {
            Evidence evidence = result.apply(before);
            known(evidence);
            try {
                return new Entered(
                        cases.getObject().enterAfter(before, List.of(new EvidenceSet(evidence)), reason), evidence);
            } catch (CaseChangedMeanwhile e) {
                if (tries == MOST_TRIES) {
                    throw e;
                }
                before = cases.getObject().store().read(seen.id());
            }
        }
    }

    private void known(Evidence evidence) {
        KnownIds knows = new KnownIds(knowledge.getObject());
        evidence.spokenOf().forEach(knows::finding);
    }
}
