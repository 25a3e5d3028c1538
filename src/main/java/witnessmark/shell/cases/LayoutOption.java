package witnessmark.shell.cases;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.LayoutFeatures;
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
        Map<String, String> words = new LinkedHashMap<>(LayoutFeatures.words(now));
        put(words, "range", range);
        put(words, "splitter", splitter);
        put(words, "countershafts", countershafts);
        put(words, "linkage", linkage);
        put(words, "oil-pump", pump);
        put(words, "oil-cooler", cooler);
        put(words, "pto", pto);
        return LayoutFeatures.layout(
                ratios.isEmpty() ? now.forwardRatios() : OptionalInt.of(number("ratios", ratios)), words);
    }

    private static void put(Map<String, String> words, String feature, String word) {
        if (word.isEmpty()) {
            return;
        }
        Set<String> allowed = LayoutFeatures.allowed(feature).keySet();
        if (!allowed.contains(word)) {
            throw new WrongUsage(
                    "--" + feature + " '" + Terminal.harmless(word) + "' is not known", String.join(", ", allowed));
        }
        words.put(feature, word);
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
