package witnessmark.casefile.history;

import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence;

/** A computed or logged result taken off the case. */
public record EvidenceRemoved(String id, Optional<Evidence> from) implements Change {
    public EvidenceRemoved(String id) {
        this(id, Optional.empty());
    }

    @Override
    public String kind() {
        return "evidence-removed";
    }

    @Override
    public Map<String, Object> form() {
        return Forms.cleared("evidence", id, from, CaseForm::evidence);
    }

    @Override
    public Change against(CaseSheet now) {
        return new EvidenceRemoved(id, now.evidence(id));
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.removeEvidence(id);
    }
}
