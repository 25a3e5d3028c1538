package witnessmark.casefile.history;

import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.gearbox.Layout;

/** The first entry of every case. */
public record Opened(CaseId id, String title, String complaint, Vehicle vehicle, Layout gearbox) implements Change {
    public Opened {
        title = TextField.TITLE.checked(title);
        complaint = TextField.COMPLAINT.checked(complaint);
    }

    @Override
    public String kind() {
        return "opened";
    }

    @Override
    public Map<String, Object> form() {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("case", id.text());
        form.put("title", title);
        form.put("complaint", complaint);
        form.put("vehicle", CaseForm.vehicle(vehicle));
        form.put("gearbox", CaseForm.gearbox(gearbox));
        return form;
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        if (!sheet.id().equals(id)) {
            throw new CaseRefused("opened: the entry is of case '" + id + "', not '" + sheet.id() + "'", "take it out");
        }
        sheet.text(TextField.TITLE, title)
                .text(TextField.COMPLAINT, complaint)
                .vehicle(vehicle)
                .gearbox(gearbox);
    }
}
