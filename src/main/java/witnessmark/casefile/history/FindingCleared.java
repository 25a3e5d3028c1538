package witnessmark.casefile.history;

import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;

/** A finding taken off the case. */
public record FindingCleared(String finding, Optional<FindingEntry> from) implements Change {
    public FindingCleared(String finding) {
        this(finding, Optional.empty());
    }

    @Override
    public String kind() {
        return "finding-cleared";
    }

    @Override
    public Map<String, Object> form() {
        return Forms.cleared("finding", finding, from, CaseForm::finding);
    }

    @Override
    public Change against(CaseSheet now) {
        return new FindingCleared(finding, now.finding(finding));
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.clearFinding(finding);
    }
}
