package witnessmark.gearbox;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The words by which cases, knowledge and commands name the features of a layout. */
public final class LayoutFeatures {
    private record Feature<E extends Enum<E>>(Class<E> set, Function<Layout, Optional<E>> of) {
        Optional<String> word(Layout layout) {
            return of.apply(layout).map(EnumWord::of);
        }
    }

    private static final Map<String, Feature<?>> FEATURES = features();

    private LayoutFeatures() {}

    /** The names of the features, in the order in which they are written. */
    public static Set<String> names() {
        return FEATURES.keySet();
    }

    /** The words that the feature may have, with what each stands for. */
    public static Map<String, ? extends Enum<?>> allowed(String feature) {
        return EnumWord.all(known(feature).set());
    }

    /** The layout's word for a feature; empty where the layout does not say. */
    public static Optional<String> word(Layout layout, String feature) {
        return known(feature).word(layout);
    }

    /** The words of all features of which the layout says something, in order. */
    public static Map<String, String> words(Layout layout) {
        Map<String, String> words = new LinkedHashMap<>();
        FEATURES.forEach((name, feature) -> feature.word(layout).ifPresent(word -> words.put(name, word)));
        return words;
    }

    /** The layout that these words name; a feature without one of its words is not said. */
    public static Layout layout(OptionalInt forwardRatios, Map<String, String> words) {
        return new Layout(
                forwardRatios,
                value(Layout.RangeShift.class, words.get("range")),
                value(Layout.Splitter.class, words.get("splitter")),
                value(Layout.Countershafts.class, words.get("countershafts")),
                value(Layout.Linkage.class, words.get("linkage")),
                value(Layout.Fitted.class, words.get("oil-pump")),
                value(Layout.Fitted.class, words.get("oil-cooler")),
                value(Layout.Fitted.class, words.get("pto")));
    }

    private static <E extends Enum<E>> Optional<E> value(Class<E> set, @Nullable String word) {
        return Optional.ofNullable(word).map(EnumWord.all(set)::get);
    }

    private static Feature<?> known(String name) {
        Feature<?> feature = FEATURES.get(name);
        if (feature == null) {
            throw new IllegalArgumentException("no feature of a layout: " + name);
        }
        return feature;
    }

    private static Map<String, Feature<?>> features() {
        Map<String, Feature<?>> features = new LinkedHashMap<>();
        features.put("range", new Feature<>(Layout.RangeShift.class, Layout::range));
        features.put("splitter", new Feature<>(Layout.Splitter.class, Layout::splitter));
        features.put("countershafts", new Feature<>(Layout.Countershafts.class, Layout::countershafts));
        features.put("linkage", new Feature<>(Layout.Linkage.class, Layout::linkage));
        features.put("oil-pump", new Feature<>(Layout.Fitted.class, Layout::oilPump));
        features.put("oil-cooler", new Feature<>(Layout.Fitted.class, Layout::oilCooler));
        features.put("pto", new Feature<>(Layout.Fitted.class, Layout::powerTakeOff));
        return Collections.unmodifiableMap(features);
    }
}
