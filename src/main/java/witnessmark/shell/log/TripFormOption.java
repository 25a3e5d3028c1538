package witnessmark.shell.log;

import org.springframework.core.convert.converter.Converter;
import org.springframework.stereotype.Component;
import witnessmark.shell.print.WrongUsage;

/** The form that an option names. */
@Component
class TripFormOption implements Converter<String, TripForm> {
    @Override
    public TripForm convert(String word) {
        return switch (word) {
            case "text" -> TripForm.TEXT;
            case "json" -> TripForm.JSON;
            case "csv" -> TripForm.CSV;
            default -> throw WrongUsage.unknown("--format", word, "text, json or csv");
        };
    }
}
