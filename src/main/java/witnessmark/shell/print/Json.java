package witnessmark.shell.print;

import java.io.StringWriter;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;
import witnessmark.gearbox.EnumWord;

/**
 * Writes records, maps, lists, texts, numbers, truth values and words of closed sets as one line of JSON. A record is an
 * object of its components, by their names and in their order: null is said, an empty Optional is left out.
 */
public final class Json {
    private static final JsonFactory FACTORY = new JsonFactory();

    /** The name of a component that Java cannot write. */
    @Retention(RetentionPolicy.RUNTIME)
    @Target(ElementType.RECORD_COMPONENT)
    public @interface Name {
        String value();
    }

    /** A record whose components stand among those around it, not in an object of their own. */
    @Retention(RetentionPolicy.RUNTIME)
    @Target(ElementType.RECORD_COMPONENT)
    public @interface Inlined {}

    private Json() {}

    public static String of(Record value) {
        return written(value);
    }

    public static String of(Map<String, ?> value) {
        return written(value);
    }

    /** A list that is left out where it is empty. */
    public static <T> Optional<List<T>> some(List<T> list) {
        return Optional.of(list).filter(l -> !l.isEmpty());
    }

    private static String written(Object value) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(ObjectWriteContext.empty(), text)) {
            write(json, value);
        }
        return text.toString();
    }

    private static void write(JsonGenerator json, @Nullable Object value) {
        if (value == null) {
            json.writeNull();
        } else if (value instanceof Record object) {
            json.writeStartObject();
            components(json, object);
            json.writeEndObject();
        } else if (value instanceof Map<?, ?> map) {
            json.writeStartObject();
            map.forEach((name, inner) -> {
                json.writeName(String.valueOf(name));
                write(json, inner);
            });
            json.writeEndObject();
        } else if (value instanceof Iterable<?> list) {
            json.writeStartArray();
            list.forEach(inner -> write(json, inner));
            json.writeEndArray();
        } else if (value instanceof Double number) {
            json.writeNumber(number);
        } else if (value instanceof Number number) {
            json.writeNumber(number.longValue());
        } else if (value instanceof Boolean truth) {
            json.writeBoolean(truth);
        } else {
            json.writeString(value instanceof Enum<?> word ? EnumWord.of(word) : String.valueOf(value));
        }
    }

    private static void components(JsonGenerator json, Record object) {
        for (RecordComponent component : object.getClass().getRecordComponents()) {
            Object value = value(component, object);
            if (value instanceof Optional<?> optional) {
                optional.ifPresent(inner -> component(json, component, inner));
            } else {
                component(json, component, value);
            }
        }
    }

    private static void component(JsonGenerator json, RecordComponent component, @Nullable Object value) {
        if (component.isAnnotationPresent(Inlined.class) && value instanceof Record inner) {
            components(json, inner);
            return;
        }
        Name name = component.getAnnotation(Name.class);
        json.writeName(name == null ? component.getName() : name.value());
        write(json, value);
    }

    private static @Nullable Object value(RecordComponent component, Record object) {
        try {
            // The record may be known in its own room only.
            component.getAccessor().setAccessible(true);
            return component.getAccessor().invoke(object);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
