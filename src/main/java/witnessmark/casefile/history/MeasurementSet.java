package witnessmark.casefile.history;

import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Measurement;

/** A measurement entered, in place of what stood before, if anything. */
public record MeasurementSet(Optional<Measurement> from, Measurement to) implements Change {
    public MeasurementSet(Measurement to) {
        this(Optional.empty(), to);
    }

    @Override
    public String kind() {
        return "measurement-set";
    }

    @Override
    public Map<String, Object> form() {
        return Forms.set("measurement", to.measure(), from, to, CaseForm::measurement);
    }

    @Override
    public Change against(CaseSheet now) {
        return new MeasurementSet(now.measurement(to.measure()), to);
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.measurement(to);
    }
}
