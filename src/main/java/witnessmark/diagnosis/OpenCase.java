package witnessmark.diagnosis;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.diagnosis.fact.Measured;
import witnessmark.inference.Report;
import witnessmark.knowledge.KnowledgeBase;

/** A case under judgement: findings can be set and withdrawn, and the judgement follows. Not for several threads. */
public final class OpenCase implements AutoCloseable {
    private final String id;
    private final RuleSession session;
    private final CauseNetwork network;
    private final KnowledgeBase knowledge;
    private final Map<String, Report> likelihoods = new HashMap<>();

    OpenCase(String id, RuleSession session, CauseNetwork network, KnowledgeBase knowledge) {
        this.id = id;
        this.session = session;
        this.network = network;
        this.knowledge = knowledge;
    }

    /** Sets a finding, in place of what was said of it before; "not looked at" withdraws it. */
    public void report(String finding, FindingState state) {
        report(finding, state, Optional.empty());
    }

    /** The same for a result that shows the finding only more or less surely. */
    void report(String finding, FindingState state, Optional<Likelihood> likelihood) {
        likelihoods.remove(finding);
        likelihood.ifPresent(l -> likelihoods.put(finding, new Report(l.ifPresent(), l.ifAbsent())));
        Diagnosis.state(state).ifPresentOrElse(s -> session.report(finding, s), () -> session.withdraw(finding));
    }

    void measure(Measured measured) {
        session.measure(measured);
    }

    /** What can be said on the evidence as it is now. */
    public Judgement judgement() {
        Premises premises = session.premises();
        Reading reading = new Reading(network, knowledge.vocabulary(), premises, likelihoods);
        return new FormJudgement(id, reading, session, knowledge).judgement();
    }

    @Override
    public void close() {
        session.close();
    }
}
