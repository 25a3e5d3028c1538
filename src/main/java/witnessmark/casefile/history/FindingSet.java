package witnessmark.casefile.history;

import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;

/** A finding entered, in place of what stood before, if anything. */
public record FindingSet(Optional<FindingEntry> from, FindingEntry to) implements Change {
    public FindingSet(FindingEntry to) {
        this(Optional.empty(), to);
    }

    @Override
    public String kind() {
        return "finding-set";
    }

    @Override
    public Map<String, Object> form() {
        return Forms.set("finding", to.finding(), from, to, CaseForm::finding);
    }

    @Override
    public Change against(CaseSheet now) {
        return new FindingSet(now.finding(to.finding()), to);
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.finding(to);
    }
}
