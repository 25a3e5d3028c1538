package witnessmark.shell.print;

import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;

/** The texts of the program, by key, in English; those for the driver in Spanish too. Places in them are {0}, {1}. */
public final class Texts {
    private final ResourceBundle texts;
    private final ResourceBundle driverTexts;
    private final Language language;

    /** The languages that texts for the driver can be had in. */
    public enum Language {
        ENGLISH("en"),
        SPANISH("es");

        private final String code;

        Language(String code) {
            this.code = code;
        }

        /** The language so coded; throws {@link WrongUsage} if it is none. */
        public static Language of(String code) {
            for (Language language : values()) {
                if (language.code.equals(code)) {
                    return language;
                }
            }
            throw new WrongUsage("--language '" + Terminal.harmless(code) + "' is not known; en or es");
        }
    }

    public Texts(Language language) {
        this.language = language;
        texts = bundle("messages.interview", "en");
        driverTexts = bundle("messages.driver", language.code);
    }

    public Language language() {
        return language;
    }

    /** The text with its places filled. */
    public String text(String key, Object... values) {
        return filled(texts, key, values);
    }

    /** A text for the driver, in the language chosen. */
    public String driver(String key, Object... values) {
        return filled(driverTexts, key, values);
    }

    private static String filled(ResourceBundle bundle, String key, Object... values) {
        String text;
        try {
            text = bundle.getString(key);
        } catch (MissingResourceException e) {
            throw new IllegalStateException("no text for '" + key + "'", e);
        }
        for (int i = 0; i < values.length; i++) {
            text = text.replace("{" + i + "}", String.valueOf(values[i]));
        }
        return text;
    }

    private static ResourceBundle bundle(String name, String code) {
        // Without the fallback control a Spanish machine would turn the English texts Spanish.
        return ResourceBundle.getBundle(
                name,
                code.equals("en") ? Locale.ROOT : Locale.forLanguageTag(code),
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    }
}
