package witnessmark.language;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Texts by key in one language. Places in them are {0}, {1} for values in order and {name} for named ones. A key that is
 * not there is an error of the program: {@link IllegalStateException}.
 */
public final class Texts {
    private static final Map<String, Texts> SHIPPED = new ConcurrentHashMap<>();

    private final String name;
    private final Language language;
    private final Map<String, String> texts;

    private Texts(String name, Language language, Map<String, String> texts) {
        this.name = name;
        this.language = language;
        this.texts = texts;
    }

    /** The shipped texts {@code messages/NAME_TAG.properties}. */
    public static Texts of(String name, Language language) {
        return SHIPPED.computeIfAbsent(
                "/messages/" + name + "_" + language.tag() + ".properties", file -> shipped(file, language));
    }

    private static Texts shipped(String file, Language language) {
        try (InputStream in = Texts.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException("there are no texts " + file);
            }
            return read(file, language, new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Texts written as {@code key = text} a line, as property files are.
     *
     * @throws IllegalArgumentException if they are not written so
     */
    public static Texts parse(String name, Language language, String text) {
        try {
            return read(name, language, new StringReader(text));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Texts read(String name, Language language, Reader in) throws IOException {
        Properties properties = new Properties();
        properties.load(in);
        Map<String, String> texts = new TreeMap<>();
        properties.stringPropertyNames().forEach(key -> texts.put(key, properties.getProperty(key)));
        return new Texts(name, language, texts);
    }

    /** These texts with others laid on top. */
    public Texts with(Texts others) {
        Map<String, String> all = new TreeMap<>(texts);
        all.putAll(others.texts);
        return new Texts(others.name + ", " + name, language, all);
    }

    public Language language() {
        return language;
    }

    public Set<String> keys() {
        return texts.keySet();
    }

    /** All texts by key, for templates. */
    public Map<String, String> all() {
        return Map.copyOf(texts);
    }

    public boolean has(String key) {
        return texts.containsKey(key);
    }

    /** The text with its places filled, once and from left to right: what a value says is not filled again. */
    public String text(String key, Object... values) {
        String text = texts.get(key);
        if (text == null) {
            throw new IllegalStateException("no text for '" + key + "' in " + name);
        }
        return values.length == 0 ? text : fill(text, values);
    }

    private static String fill(String text, Object... values) {
        StringBuilder filled = new StringBuilder();
        int at = 0;
        while (at < text.length()) {
            char c = text.charAt(at);
            boolean place = c == '{'
                    && at + 2 < text.length()
                    && text.charAt(at + 2) == '}'
                    && Character.isDigit(text.charAt(at + 1))
                    && text.charAt(at + 1) - '0' < values.length;
            filled.append(place ? String.valueOf(values[text.charAt(at + 1) - '0']) : String.valueOf(c));
            at += place ? 3 : 1;
        }
        return filled.toString();
    }
}
