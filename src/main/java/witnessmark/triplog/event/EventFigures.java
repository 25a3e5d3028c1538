package witnessmark.triplog.event;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;

/** The figures of one event. */
public record EventFigures(Map<EventFigure, Double> values) {
    public static final EventFigures NONE = new EventFigures(Map.of());

    public EventFigures {
        values = Collections.unmodifiableMap(
                values.isEmpty() ? new EnumMap<>(EventFigure.class) : new EnumMap<>(values));
    }

    public static EventFigures of(EventFigure figure, double value) {
        return NONE.and(figure, value);
    }

    /** These and one more. */
    public EventFigures and(EventFigure figure, double value) {
        Map<EventFigure, Double> more = new EnumMap<>(EventFigure.class);
        more.putAll(values);
        more.put(figure, value);
        return new EventFigures(more);
    }

    /** 0 where it was not measured. */
    public double get(EventFigure figure) {
        return values.getOrDefault(figure, 0.0);
    }

    public boolean is(EventFigure figure) {
        return get(figure) > 0.5;
    }

    /** By name, in the order of {@link EventFigure}. */
    public Map<String, Double> byName() {
        Map<String, Double> names = new LinkedHashMap<>();
        values.forEach((figure, value) -> names.put(figure.id(), value));
        return names;
    }
}
