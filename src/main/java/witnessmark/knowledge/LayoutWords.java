package witnessmark.knowledge;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import witnessmark.gearbox.Layout;

/** The words by which knowledge and case files name the features of a layout. */
public final class LayoutWords {
    /** The words allowed for each feature. */
    public static final Map<String, Set<String>> ALLOWED = allowed();

    private LayoutWords() {}

    /** The layout's word for a feature; empty where the layout does not say. */
    static Optional<String> word(Layout layout, String feature) {
        Optional<? extends Enum<?>> value =
                switch (feature) {
                    case "range" -> layout.range();
                    case "splitter" -> layout.splitter();
                    case "countershafts" -> layout.countershafts();
                    case "linkage" -> layout.linkage();
                    case "oil-pump" -> layout.oilPump();
                    case "oil-cooler" -> layout.oilCooler();
                    case "pto" -> layout.powerTakeOff();
                    default -> throw new IllegalArgumentException("no feature of a layout: " + feature);
                };
        return value.map(LayoutWords::wordOf);
    }

    private static Map<String, Set<String>> allowed() {
        Map<String, Set<String>> words = new LinkedHashMap<>();
        words.put("range", wordsOf(Layout.RangeShift.values()));
        words.put("splitter", wordsOf(Layout.Splitter.values()));
        words.put("countershafts", wordsOf(Layout.Countershafts.values()));
        words.put("linkage", wordsOf(Layout.Linkage.values()));
        words.put("oil-pump", wordsOf(Layout.Fitted.values()));
        words.put("oil-cooler", wordsOf(Layout.Fitted.values()));
        words.put("pto", wordsOf(Layout.Fitted.values()));
        return Map.copyOf(words);
    }

    private static Set<String> wordsOf(Enum<?>[] values) {
        return Arrays.stream(values).map(LayoutWords::wordOf).collect(Collectors.toUnmodifiableSet());
    }

    private static String wordOf(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
