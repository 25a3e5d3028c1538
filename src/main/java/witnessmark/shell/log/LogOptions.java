package witnessmark.shell.log;

import org.springframework.core.convert.converter.ConverterRegistry;
import org.springframework.stereotype.Component;
import witnessmark.shell.print.RoomOptions;
import witnessmark.shell.print.WrongUsage;
import witnessmark.triplog.event.HabitLimits;

/** Load and form that an option names; a load left out is not known. */
@Component
class LogOptions implements RoomOptions {

    @Override
    public void addTo(ConverterRegistry values) {
        values.addConverter(String.class, HabitLimits.Load.class, LogOptions::load);
        values.addConverter(String.class, TripForm.class, LogOptions::form);
    }

    private static HabitLimits.Load load(String word) {
        return switch (word) {
            case "" -> HabitLimits.Load.UNKNOWN;
            case "empty" -> HabitLimits.Load.EMPTY;
            case "loaded" -> HabitLimits.Load.LOADED;
            default -> throw WrongUsage.unknown("--load", word, "empty or loaded");
        };
    }

    private static TripForm form(String word) {
        return switch (word) {
            case "text" -> TripForm.TEXT;
            case "json" -> TripForm.JSON;
            case "csv" -> TripForm.CSV;
            default -> throw WrongUsage.unknown("--format", word, "text, json or csv");
        };
    }
}
