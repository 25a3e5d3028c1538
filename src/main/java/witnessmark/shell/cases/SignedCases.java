package witnessmark.shell.cases;

import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.CheckKnown;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.OpenCase;
import witnessmark.diagnosis.Verdict;
import witnessmark.knowledge.KnowledgeBase;

/** Sets today's judgement beside the one a case was signed on. */
@Component
public class SignedCases {
    private final ObjectProvider<Diagnosis> diagnosis;
    private final ObjectProvider<MadeWith> made;

    SignedCases(ObjectProvider<Diagnosis> diagnosis, ObjectProvider<MadeWith> made) {
        this.diagnosis = diagnosis;
        this.made = made;
    }

    /** Empty for an open case, which is not judged for it. */
    public Optional<AfterSignOff> after(CaseDocument document) {
        return document.present().isSignedOff()
                ? after(document, CombinedEvidence.of(document.present()))
                : Optional.empty();
    }

    /** The same with what the results kept in the case come to, where that was asked before. */
    Optional<AfterSignOff> after(CaseDocument document, CombinedEvidence evidence) {
        if (!document.present().isSignedOff()) {
            return Optional.empty();
        }
        Diagnosis today = diagnosis.getObject();
        CaseFile known = CheckKnown.toJudge(document.present(), today.knowledge());
        try (OpenCase open = today.open(known, evidence.asOf(known))) {
            return after(document, open.verdict(), today.knowledge());
        }
    }

    /** The same of a case that was judged; empty for an open one. */
    public Optional<AfterSignOff> after(CaseDocument document, Verdict now, KnowledgeBase knowledge) {
        return AfterSignOff.of(document.present(), document.history(), now, made.getObject(), knowledge);
    }
}
