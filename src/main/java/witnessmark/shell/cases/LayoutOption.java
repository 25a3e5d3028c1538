package witnessmark.shell.cases;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Layout;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;

/** Reads the words by which a command names the features of a layout. */
final class LayoutOption {
    private LayoutOption() {}

    /** As many as a layout takes. */
    private static final int MOST_RATIOS = 32;

    /** The layout of these words where they say something, else as it was; {@link WrongUsage} names the words allowed. */
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
                named(Layout.RangeShift.class, "range", range).or(now::range),
                named(Layout.Splitter.class, "splitter", splitter).or(now::splitter),
                named(Layout.Countershafts.class, "countershafts", countershafts)
                        .or(now::countershafts),
                named(Layout.Linkage.class, "linkage", linkage).or(now::linkage),
                named(Layout.Fitted.class, "oil-pump", pump).or(now::oilPump),
                named(Layout.Fitted.class, "oil-cooler", cooler).or(now::oilCooler),
                named(Layout.Fitted.class, "pto", pto).or(now::powerTakeOff));
    }

    private static <E extends Enum<E>> Optional<E> named(Class<E> set, String feature, String word) {
        if (word.isEmpty()) {
            return Optional.empty();
        }
        Map<String, E> allowed = EnumWord.all(set);
        return Optional.of(Optional.ofNullable(allowed.get(word))
                .orElseThrow(() -> new WrongUsage(
                        "--" + feature + " '" + Terminal.harmless(word) + "' is not known",
                        String.join(", ", allowed.keySet()))));
    }

    private static int number(String option, String word) {
        try {
            int number = Integer.parseInt(word);
            if (number < 1 || number > MOST_RATIOS) {
                throw new WrongUsage("--" + option + " '" + word + "' cannot be", "give 1 to " + MOST_RATIOS);
            }
            return number;
        } catch (NumberFormatException e) {
            throw new WrongUsage(
                    "--" + option + " '" + Terminal.harmless(word) + "' is not a whole number", "give digits");
        }
    }
}
