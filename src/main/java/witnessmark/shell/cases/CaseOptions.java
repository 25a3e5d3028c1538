package witnessmark.shell.cases;

import org.springframework.core.convert.converter.ConverterRegistry;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.FindingState;
import witnessmark.shell.print.RoomOptions;
import witnessmark.shell.print.WrongUsage;

/** A case, the state of a finding, and the form of an export. */
@Component
class CaseOptions implements RoomOptions {

    @Override
    public void addTo(ConverterRegistry values) {
        values.addConverter(String.class, CaseId.class, CaseId::new);
        values.addConverter(String.class, FindingState.class, CaseCommands::state);
        values.addConverter(String.class, ExportCommands.TableForm.class, CaseOptions::form);
    }

    private static ExportCommands.TableForm form(String word) {
        return switch (word) {
            case "csv" -> ExportCommands.TableForm.CSV;
            case "json" -> ExportCommands.TableForm.JSON;
            default -> throw WrongUsage.unknown("--as", word, "csv or json");
        };
    }
}
