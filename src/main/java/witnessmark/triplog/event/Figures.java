package witnessmark.triplog.event;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;

/** The figures of one event. */
public record Figures(Map<Figure, Double> values) {
    public static final Figures NONE = new Figures(Map.of());

    public Figures {
        values = Collections.unmodifiableMap(values.isEmpty() ? new EnumMap<>(Figure.class) : new EnumMap<>(values));
    }

    public static Figures of(Figure figure, double value) {
        return NONE.and(figure, value);
    }

    /** These and one more. */
    public Figures and(Figure figure, double value) {
        Map<Figure, Double> more = new EnumMap<>(Figure.class);
        more.putAll(values);
        more.put(figure, value);
        return new Figures(more);
    }

    /** 0 where it was not measured. */
    public double get(Figure figure) {
        return values.getOrDefault(figure, 0.0);
    }

    public boolean is(Figure figure) {
        return get(figure) > 0.5;
    }

    /** By name, in the order of {@link Figure}. */
    public Map<String, Double> byName() {
        Map<String, Double> names = new LinkedHashMap<>();
        values.forEach((figure, value) -> names.put(figure.id(), value));
        return names;
    }
}
