package witnessmark.casefile.history;

import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseSheet;
import witnessmark.gearbox.Layout;

/** How the gearbox is built, written anew. */
public record GearboxSet(Layout from, Layout to) implements Change {
    public GearboxSet(Layout to) {
        this(Layout.unknown(), to);
    }

    @Override
    public String kind() {
        return "gearbox-set";
    }

    @Override
    public Map<String, Object> form() {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("from", CaseForm.gearbox(from));
        form.put("to", CaseForm.gearbox(to));
        return form;
    }

    @Override
    public Change against(CaseSheet now) {
        return new GearboxSet(now.gearbox(), to);
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.gearbox(to);
    }
}
