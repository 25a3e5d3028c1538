package witnessmark.casefile.history;

import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence;

/** A computed or logged result entered, in place of what stood before, if anything. */
public record EvidenceSet(Optional<Evidence> from, Evidence to) implements Change {
    public EvidenceSet(Evidence to) {
        this(Optional.empty(), to);
    }

    @Override
    public String kind() {
        return "evidence-set";
    }

    @Override
    public Map<String, Object> form() {
        return Forms.set("evidence", to.id(), from, to, CaseForm::evidence);
    }

    @Override
    public Change against(CaseSheet now) {
        return new EvidenceSet(now.evidence(to.id()), to);
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.evidence(to);
    }
}
