package witnessmark.casefile.history;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The two shapes that most changes are written in. */
final class Forms {
    private Forms() {}

    /** A named thing with what stood before, if anything, and what stands now. */
    static <T> Map<String, Object> set(
            String key, String name, Optional<T> from, T to, Function<T, Map<String, Object>> form) {
        Map<String, Object> whole = new LinkedHashMap<>();
        whole.put(key, name);
        from.ifPresent(before -> whole.put("from", form.apply(before)));
        whole.put("to", form.apply(to));
        return whole;
    }

    /** A named thing that is taken away. */
    static <T> Map<String, Object> cleared(
            String key, String name, Optional<T> from, Function<T, Map<String, Object>> form) {
        Map<String, Object> whole = new LinkedHashMap<>();
        whole.put(key, name);
        from.ifPresent(before -> whole.put("from", form.apply(before)));
        return whole;
    }
}
