package witnessmark.shell.settings;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.MutablePropertySources;
import org.springframework.core.env.PropertySource;
import org.springframework.core.env.StandardEnvironment;
import org.springframework.core.io.support.ResourcePropertySource;
import witnessmark.shell.print.Refused;
import witnessmark.yaml.Nearest;

/**
 * Where settings come from, the first that says one counts: the options of this run, the environment variables named
 * by {@link Setting}, the user's own settings file, the program itself. Nothing in the current folder is looked at: who
 * made an entry, and where it is kept, must not depend on a file that somebody else has left there.
 */
public final class SettingSources {
    static final String RUN = "run";
    static final String VARIABLES = "variables";
    static final String FILE = "file";
    /** The sources, the one that counts first. */
    static final List<String> IN_ORDER = List.of(RUN, VARIABLES, FILE);

    private static final List<String> FORMER_VARIABLES =
            List.of("WITNESSMARK_DATABASE_URL", "WITNESSMARK_DATABASE_USER", "WITNESSMARK_DATABASE_PASSWORD");

    private SettingSources() {}

    /** The settings of this run; what cannot be understood in a variable or the user's file is refused. */
    public static ConfigurableEnvironment of(Map<String, Object> options, Map<String, String> variables, String home) {
        ConfigurableEnvironment environment = new StandardEnvironment() {
            @Override
            protected void customizePropertySources(MutablePropertySources sources) {
                // neither all system properties nor all environment variables, as would be usual
            }
        };
        refuseFormerFile(variables, home);
        refuseFormerVariables(variables);
        refuseUnknownVariables(variables);
        SettingsFile file = SettingsFile.of(variables, home);
        MutablePropertySources sources = environment.getPropertySources();
        Map<String, Object> run = new HashMap<>(options);
        run.put("witnessmark.settings.file", file.path().toString());
        sources.addLast(new MapPropertySource(RUN, run));
        sources.addLast(new MapPropertySource(VARIABLES, named(variables)));
        sources.addLast(new MapPropertySource(FILE, properties(file.read())));
        sources.addLast(shipped());
        Arrays.stream(Setting.values()).forEach(setting -> refuse(setting, run, variables));
        return environment;
    }

    private static PropertySource<?> shipped() {
        try {
            return new ResourcePropertySource("classpath:application.properties");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Lets the rest of the run know what the file says now. */
    static void reread(ConfigurableEnvironment environment, SettingsFile file) {
        MutablePropertySources sources = environment.getPropertySources();
        MapPropertySource read = new MapPropertySource(FILE, properties(file.read()));
        if (sources.contains(FILE)) {
            sources.replace(FILE, read);
        } else {
            sources.addLast(read);
        }
    }

    /** What is in the file, under the names by which the program asks. */
    private static Map<String, Object> properties(Map<Setting, String> settings) {
        Map<String, Object> properties = new HashMap<>();
        settings.forEach((setting, value) -> properties.put(setting.property(), value));
        return properties;
    }

    private static Map<String, Object> named(Map<String, String> variables) {
        Map<String, Object> named = new HashMap<>();
        for (Setting setting : Setting.values()) {
            if (variables.containsKey(setting.variable())) {
                named.put(setting.property(), variables.get(setting.variable()));
            }
        }
        return named;
    }

    /** A word that is none of a setting's is refused where it was given, not where it is used. */
    private static void refuse(Setting setting, Map<String, Object> run, Map<String, String> variables) {
        if (setting.choices().isEmpty()) {
            return;
        }
        Object option = run.get(setting.property());
        fault(setting, option).ifPresent(fault -> {
            throw new Refused("--" + setting.word() + " '" + option + "' " + fault);
        });
        String variable = variables.get(setting.variable());
        fault(setting, variable).ifPresent(fault -> {
            throw new Refused("variable " + setting.variable() + " '" + variable + "' " + fault);
        });
    }

    private static Optional<String> fault(Setting setting, Object value) {
        return Optional.ofNullable(value).flatMap(v -> setting.fault(String.valueOf(v)));
    }

    /** Who still sets them means a shared store, and must not write to one in a folder unawares. */
    private static void refuseFormerVariables(Map<String, String> variables) {
        FORMER_VARIABLES.stream().filter(variables::containsKey).forEach(name -> {
            throw new Refused(
                    "the variable " + name + " is not read, since others could see what is in it",
                    "write url," + " user and password into a file for you alone and name it with "
                            + Setting.DATABASE.variable() + " or --database");
        });
    }

    /** A mistyped name would be lost in silence, and what was to go elsewhere would go into the usual store. */
    private static void refuseUnknownVariables(Map<String, String> variables) {
        List<String> known =
                Arrays.stream(Setting.values()).map(Setting::variable).toList();
        variables.keySet().stream()
                .filter(name -> name.startsWith(Setting.PREFIX) && !known.contains(name))
                .sorted()
                .findFirst()
                .ifPresent(name -> {
                    throw new Refused(
                            "the variable " + name + " is none that is read",
                            Nearest.to(name, known)
                                            .map(near -> "did you mean " + near + "?")
                                            .orElse("those are " + String.join(", ", known))
                                    + " Otherwise unset it");
                });
    }

    /** A name set in the file of an earlier form would be lost in silence. */
    private static void refuseFormerFile(Map<String, String> variables, String home) {
        var former = SettingsFile.folder(variables, home).resolve("settings.properties");
        if (Files.exists(former)) {
            throw new Refused(
                    "settings stand in '" + SettingsFile.of(variables, home).path() + "' now, one NAME: VALUE a"
                            + " line",
                    "write those of '" + former + "' there and remove it");
        }
    }
}
