package witnessmark.diagnosis;

import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.fact.Measured;
import witnessmark.knowledge.KnowledgeBase;

/** A case under judgement: findings can be set and withdrawn, and the judgement follows. Not for several threads. */
public final class OpenCase implements AutoCloseable {
    private final String id;
    private final RuleSession session;
    private final CauseNetwork network;
    private final KnowledgeBase knowledge;

    OpenCase(String id, RuleSession session, CauseNetwork network, KnowledgeBase knowledge) {
        this.id = id;
        this.session = session;
        this.network = network;
        this.knowledge = knowledge;
    }

    /** Sets a finding, in place of what was said of it before; "not looked at" withdraws it. */
    public void report(String finding, FindingState state) {
        Diagnosis.state(state).ifPresentOrElse(s -> session.report(finding, s), () -> session.withdraw(finding));
    }

    void measure(Measured measured) {
        session.measure(measured);
    }

    /** What can be said on the evidence as it is now. */
    public Judgement judgement() {
        Premises premises = session.premises();
        Reading reading = new Reading(network, knowledge.vocabulary(), premises);
        return new FormJudgement(id, reading, session, knowledge).judgement();
    }

    /** Each finding weighed against each class, on the evidence as it is now. */
    public EvidenceMatrix matrix() {
        return EvidenceMatrix.of(new Reading(network, knowledge.vocabulary(), session.premises()), knowledge);
    }

    @Override
    public void close() {
        session.close();
    }
}
