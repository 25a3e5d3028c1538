package witnessmark.shell.cases;

import org.springframework.core.convert.converter.ConverterRegistry;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.FindingState;
import witnessmark.shell.print.RoomOptions;

/** A case, and the state of a finding. */
@Component
class CaseOptions implements RoomOptions {

    @Override
    public void addTo(ConverterRegistry values) {
        values.addConverter(String.class, CaseId.class, CaseId::new);
        values.addConverter(String.class, FindingState.class, CaseCommands::state);
    }
}
