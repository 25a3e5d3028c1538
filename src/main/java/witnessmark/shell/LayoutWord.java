package witnessmark.shell;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import witnessmark.gearbox.Layout;

/** Reads the words by which a command names the features of a layout. */
final class LayoutWord {
    private LayoutWord() {}

    /** The feature so named; empty for an empty word; {@link WrongUsage} names the words allowed. */
    static <E extends Enum<E>> Optional<E> of(Class<E> feature, String option, String word) {
        if (word.isEmpty()) {
            return Optional.empty();
        }
        for (E value : feature.getEnumConstants()) {
            if (word(value).equals(word)) {
                return Optional.of(value);
            }
        }
        throw new WrongUsage("--" + option + " '" + Terminal.harmless(word) + "' is not known; "
                + Arrays.stream(feature.getEnumConstants())
                        .map(LayoutWord::word)
                        .collect(Collectors.joining(", ")));
    }

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The layout of these words where they say something, else as it was. */
    static Layout changed(
            Layout now,
            String ratios,
            String range,
            String splitter,
            String countershafts,
            String linkage,
            String pump,
            String cooler,
            String pto) {
        return new Layout(
                ratios.isEmpty() ? now.forwardRatios() : OptionalInt.of(number("ratios", ratios)),
                of(Layout.RangeShift.class, "range", range).or(now::range),
                of(Layout.Splitter.class, "splitter", splitter).or(now::splitter),
                of(Layout.Countershafts.class, "countershafts", countershafts).or(now::countershafts),
                of(Layout.Linkage.class, "linkage", linkage).or(now::linkage),
                of(Layout.Fitted.class, "oil-pump", pump).or(now::oilPump),
                of(Layout.Fitted.class, "oil-cooler", cooler).or(now::oilCooler),
                of(Layout.Fitted.class, "pto", pto).or(now::powerTakeOff));
    }

    private static int number(String option, String word) {
        try {
            return Integer.parseInt(word);
        } catch (NumberFormatException e) {
            throw new WrongUsage("--" + option + " '" + Terminal.harmless(word) + "' is not a whole number");
        }
    }
}
