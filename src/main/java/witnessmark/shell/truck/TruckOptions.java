package witnessmark.shell.truck;

import org.springframework.core.convert.converter.ConverterRegistry;
import org.springframework.stereotype.Component;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;
import witnessmark.gearbox.shift.RangeShiftQuestion.SplitterMove;
import witnessmark.shell.print.RoomOptions;
import witnessmark.shell.print.WrongUsage;

/** How a shift was made, and the range left in, as options name them. */
@Component
class TruckOptions implements RoomOptions {

    @Override
    public void addTo(ConverterRegistry values) {
        values.addConverter(String.class, Clutch.class, TruckOptions::clutch);
        values.addConverter(String.class, LeverTiming.class, TruckOptions::lever);
        values.addConverter(String.class, SplitterMove.class, TruckOptions::splitter);
        values.addConverter(String.class, Range.class, TruckOptions::range);
    }

    private static Clutch clutch(String word) {
        return switch (word) {
            case "engaged" -> Clutch.ENGAGED;
            case "down" -> Clutch.PEDAL_DOWN;
            default -> throw WrongUsage.unknown("--clutch", word, "engaged (pedal up) or down (pedal down)");
        };
    }

    static String word(Clutch clutch) {
        return switch (clutch) {
            case ENGAGED -> "engaged";
            case PEDAL_DOWN -> "down";
        };
    }

    static String word(LeverTiming lever) {
        return switch (lever) {
            case PRESELECTED -> "preselected";
            case IN_NEUTRAL -> "neutral";
            case LEVER_HOME_FIRST -> "home";
        };
    }

    private static LeverTiming lever(String word) {
        return switch (word) {
            case "preselected" -> LeverTiming.PRESELECTED;
            case "neutral" -> LeverTiming.IN_NEUTRAL;
            case "home" -> LeverTiming.LEVER_HOME_FIRST;
            default -> throw WrongUsage.unknown(
                    "--lever",
                    word,
                    "preselected, neutral (range moved with the lever in neutral) or home (lever home"
                            + " before the range was done)");
        };
    }

    private static SplitterMove splitter(String word) {
        return switch (word) {
            case "" -> SplitterMove.AS_THE_GEARS_SAY;
            case "first" -> SplitterMove.SPLITTER_FIRST;
            case "last" -> SplitterMove.RANGE_FIRST;
            case "stays" -> SplitterMove.STAYS_SPLIT;
            default -> throw WrongUsage.unknown(
                    "--splitter",
                    word,
                    "first (home before the range moves), last (after it) or stays (split, into low range)");
        };
    }

    private static Range range(String word) {
        return switch (word) {
            case "high" -> Range.HIGH;
            case "low" -> Range.LOW;
            default -> throw WrongUsage.unknown("--range", word, "high or low");
        };
    }
}
