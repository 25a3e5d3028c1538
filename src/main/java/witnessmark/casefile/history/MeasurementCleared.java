package witnessmark.casefile.history;

import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Measurement;

/** A measurement taken off the case. */
public record MeasurementCleared(String measure, Optional<Measurement> from) implements Change {
    public MeasurementCleared(String measure) {
        this(measure, Optional.empty());
    }

    @Override
    public String kind() {
        return "measurement-cleared";
    }

    @Override
    public Map<String, Object> form() {
        return Forms.cleared("measurement", measure, from, CaseForm::measurement);
    }

    @Override
    public Change against(CaseSheet now) {
        return new MeasurementCleared(measure, now.measurement(measure));
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.clearMeasurement(measure);
    }
}
