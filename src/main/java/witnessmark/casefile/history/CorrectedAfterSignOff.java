package witnessmark.casefile.history;

import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.CheckedText;

/** A change to a case that is signed off, with the reason for it; the case stays signed off. */
public record CorrectedAfterSignOff(String reason, Change change) implements Change {
    public CorrectedAfterSignOff {
        reason = CheckedText.filledLine("reason", reason);
        if (change instanceof Opened || change instanceof SignedOff || change instanceof CorrectedAfterSignOff) {
            throw new CaseRefused("correction: '" + change.kind() + "' cannot be one", "correct what the case says");
        }
    }

    @Override
    public String kind() {
        return "corrected-after-sign-off";
    }

    @Override
    public Map<String, Object> form() {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("reason", reason);
        form.put("change", CanonicalText.form(change));
        return form;
    }

    @Override
    public Change against(CaseSheet now) {
        return new CorrectedAfterSignOff(reason, change.against(now));
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        change.applyTo(sheet, stamp);
    }
}
