package witnessmark.gearbox;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** The words by which the constants of a closed set are written: HIGH_ONLY is high-only. */
public final class EnumWord {
    private EnumWord() {}

    public static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** All constants by their words, in their order. */
    public static <E extends Enum<E>> Map<String, E> all(Class<E> set) {
        Map<String, E> words = new LinkedHashMap<>();
        for (E constant : set.getEnumConstants()) {
            words.put(of(constant), constant);
        }
        return Collections.unmodifiableMap(words);
    }
}
