package witnessmark.casefile.history;

import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Vehicle;

/** What is known of the truck written anew. */
public record VehicleSet(Vehicle from, Vehicle to) implements Change {
    public VehicleSet(Vehicle to) {
        this(Vehicle.unknown(), to);
    }

    @Override
    public String kind() {
        return "vehicle-set";
    }

    @Override
    public Map<String, Object> form() {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("from", CaseForm.vehicle(from));
        form.put("to", CaseForm.vehicle(to));
        return form;
    }

    @Override
    public Change against(CaseSheet now) {
        return new VehicleSet(now.vehicle(), to);
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.vehicle(to);
    }
}
