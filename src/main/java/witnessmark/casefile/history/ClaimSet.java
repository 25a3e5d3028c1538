package witnessmark.casefile.history;

import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Claim;

/** The facts of the claim written anew. */
public record ClaimSet(Claim from, Claim to) implements Change {
    public ClaimSet(Claim to) {
        this(Claim.none(), to);
    }

    @Override
    public String kind() {
        return "claim-set";
    }

    @Override
    public Map<String, Object> form() {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("from", from.form());
        form.put("to", to.form());
        return form;
    }

    @Override
    public Change against(CaseSheet now) {
        return new ClaimSet(now.claim(), to);
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.claim(to);
    }
}
