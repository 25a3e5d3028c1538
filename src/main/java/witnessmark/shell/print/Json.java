package witnessmark.shell.print;

import java.io.StringWriter;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.json.JsonFactory;

/** Writes maps, lists, texts, numbers and truth values as one line of JSON. */
public final class Json {
    private static final JsonFactory FACTORY = new JsonFactory();

    private Json() {}

    public static String of(Map<String, ?> value) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(tools.jackson.core.ObjectWriteContext.empty(), text)) {
            write(json, value);
        }
        return text.toString();
    }

    /** An object of these names and values, in this order: name, value, name, value … */
    public static Map<String, Object> object(Object... namesAndValues) {
        Map<String, Object> object = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            object.put((String) namesAndValues[i], namesAndValues[i + 1]);
        }
        return object;
    }

    private static void write(JsonGenerator json, @Nullable Object value) {
        if (value == null) {
            json.writeNull();
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
            json.writeString(String.valueOf(value));
        }
    }
}
