package witnessmark;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Properties;
import java.util.TreeSet;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.MutablePropertySources;
import org.springframework.core.env.StandardEnvironment;
import witnessmark.shell.print.Refused;

/**
 * Where settings come from, the first that says one counts: the options of this run, the environment variables named
 * here, the user's own settings file, the program itself. Nothing in the current folder is looked at: who made an entry,
 * and where it is kept, must not depend on a file that somebody else has left there.
 */
final class Settings {
    /** Environment variables, and the names under which the settings file knows the same. */
    private static final Map<String, String> NAMED = Map.of(
            "WITNESSMARK_STORE", "store",
            "WITNESSMARK_KNOWLEDGE", "knowledge",
            "WITNESSMARK_WHO", "who",
            "WITNESSMARK_DATABASE_URL", "database.url",
            "WITNESSMARK_DATABASE_USER", "database.user",
            "WITNESSMARK_DATABASE_PASSWORD", "database.password");

    private static final String PREFIX = "witnessmark.";

    private Settings() {}

    /** The settings file of the user; it need not be there. */
    static Path file(Map<String, String> variables, String home) {
        String named = variables.getOrDefault("XDG_CONFIG_HOME", "");
        // A relative path would be one in the current folder; the base directory specification ignores it too.
        Path folder = named.startsWith("/") ? Path.of(named) : Path.of(home, ".config");
        return folder.resolve("witnessmark").resolve("settings.properties");
    }

    /** The settings of this run; {@link Refused} if the user's file cannot be understood. */
    static ConfigurableEnvironment of(Map<String, Object> options, Map<String, String> variables, String home) {
        ConfigurableEnvironment environment = new StandardEnvironment() {
            @Override
            protected void customizePropertySources(MutablePropertySources sources) {
                // neither all system properties nor all environment variables, as would be usual
            }
        };
        MutablePropertySources sources = environment.getPropertySources();
        Map<String, Object> run = new HashMap<>(options);
        run.put("spring.config.location", "classpath:/application.properties");
        sources.addLast(new MapPropertySource("run", run));
        sources.addLast(new MapPropertySource("variables", named(variables)));
        sources.addLast(new MapPropertySource("file", read(file(variables, home))));
        return environment;
    }

    private static Map<String, Object> named(Map<String, String> variables) {
        Map<String, Object> named = new HashMap<>();
        NAMED.forEach((variable, setting) -> {
            if (variables.containsKey(variable)) {
                named.put(PREFIX + setting, variables.get(variable));
            }
        });
        return named;
    }

    private static Map<String, Object> read(Path file) {
        if (!Files.exists(file)) {
            return Map.of();
        }
        Properties read = new Properties();
        try (Reader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            read.load(text);
        } catch (CharacterCodingException | IllegalArgumentException e) {
            throw new Refused("settings file '" + file + "' is no UTF-8 text of lines NAME = VALUE; mend or remove it");
        } catch (IOException e) {
            throw new Refused("settings file '" + file + "' cannot be read; check that it is a file you may read");
        }
        Map<String, Object> settings = new LinkedHashMap<>();
        for (String name : new TreeSet<>(read.stringPropertyNames())) {
            if (!NAMED.containsValue(name)) {
                throw new Refused("settings file '" + file + "': '" + name + "' is no setting; known are: "
                        + String.join(", ", new TreeSet<>(NAMED.values())));
            }
            settings.put(PREFIX + name, read.getProperty(name).strip());
        }
        return settings;
    }
}
