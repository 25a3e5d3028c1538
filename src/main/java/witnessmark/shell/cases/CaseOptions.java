package witnessmark.shell.cases;

import org.springframework.core.convert.converter.ConverterRegistry;
import org.springframework.stereotype.Component;
import witnessmark.casefile.FindingState;
import witnessmark.shell.print.RoomOptions;

/** The state of a finding that an option names. */
@Component
class CaseOptions implements RoomOptions {

    @Override
    public void addTo(ConverterRegistry values) {
        values.addConverter(String.class, FindingState.class, CaseCommands::state);
    }
}
