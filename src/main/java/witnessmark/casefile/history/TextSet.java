package witnessmark.casefile.history;

import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.TextField;

/** One of the single texts written anew; empty for none, before or after. */
public record TextSet(TextField field, String from, String to) implements Change {
    public TextSet {
        from = field.checked(from);
        to = field.checked(to);
    }

    public TextSet(TextField field, String to) {
        this(field, "", to);
    }

    @Override
    public String kind() {
        return "text-set";
    }

    @Override
    public Map<String, Object> form() {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("text", field.word());
        form.put("from", from);
        form.put("to", to);
        return form;
    }

    @Override
    public Change against(CaseSheet now) {
        return new TextSet(field, now.text(field), to);
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.text(field, to);
    }
}
