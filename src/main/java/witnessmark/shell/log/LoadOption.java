package witnessmark.shell.log;

import org.springframework.core.convert.converter.Converter;
import org.springframework.stereotype.Component;
import witnessmark.shell.print.WrongUsage;
import witnessmark.triplog.event.HabitLimits;

/** The load that an option names; left out it is not known. */
@Component
class LoadOption implements Converter<String, HabitLimits.Load> {
    @Override
    public HabitLimits.Load convert(String word) {
        return switch (word) {
            case "" -> HabitLimits.Load.UNKNOWN;
            case "empty" -> HabitLimits.Load.EMPTY;
            case "loaded" -> HabitLimits.Load.LOADED;
            default -> throw WrongUsage.unknown("--load", word, "empty or loaded");
        };
    }
}
