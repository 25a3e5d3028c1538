package witnessmark.shell.settings;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.PropertySource;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;

/** The commands that show and change what a shop sets once. */
@Component
class SettingsCommands {
    private static final int NAME_WIDTH = 18;

    private final ConfigurableEnvironment environment;

    SettingsCommands(ConfigurableEnvironment environment) {
        this.environment = environment;
    }

    @Command(
            name = "settings show",
            group = "Settings",
            description = "Show every setting, its value and where it comes from",
            exitStatusExceptionMapper = "refusals")
    void show(
            CommandContext context,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        if (format == Format.JSON) {
            context.outputWriter().println(Json.of(json()));
            return;
        }
        Page page = new Page(context.outputWriter());
        for (Setting setting : Setting.values()) {
            Stands stands = stands(setting);
            String value = stands.value().isEmpty() ? "-" : stands.value();
            page.indented(
                    String.format("  %-" + NAME_WIDTH + "s", setting.word()),
                    " ".repeat(NAME_WIDTH + 2),
                    value + " (" + stands.from() + ")");
            page.indented(" ".repeat(NAME_WIDTH + 2), " ".repeat(NAME_WIDTH + 2), setting.meaning());
        }
        page.blank();
        page.line("An option of the run (--units us) counts before a variable, a variable before the file.");
        page.line("File: " + file().path());
        page.flush();
    }

    @Command(
            name = "settings set",
            group = "Settings",
            description = "Set one thing for all runs to come: units, language, paper, shop, logo, who, role and more",
            help = "NAME VALUE | NAME --clear; NAME as settings show lists them",
            completionProvider = "completeSetting",
            exitStatusExceptionMapper = "refusals")
    void set(
            CommandContext context,
            @Arguments List<String> words,
            @Option(longName = "clear", defaultValue = "false", description = "take it back") Boolean clear) {
        if (words.isEmpty() || clear != (words.size() == 1)) {
            throw new WrongUsage(
                    "say which and what: settings set NAME VALUE, or settings set NAME --clear",
                    "NAME is one" + " of " + String.join(", ", Setting.words()));
        }
        Setting setting = Setting.of(words.get(0));
        Optional<String> value = clear ? Optional.empty() : Optional.of(kept(setting, words.subList(1, words.size())));
        file().set(setting, value);
        SettingSources.reread(environment, file());
        Stands stands = stands(setting);
        Page page = new Page(context.outputWriter());
        page.line(setting.word() + (clear ? " is taken back." : " is set to " + value.orElse("") + "."));
        if (!stands.source().equals(SettingSources.FILE) && !clear) {
            page.line("In this run it stays " + stands.value() + " (" + stands.from() + ").");
        }
        page.flush();
    }

    /** The value as it is kept: a path from here would be another one elsewhere. */
    private static String kept(Setting setting, List<String> words) {
        String value = String.join(" ", words).strip();
        setting.fault(value).ifPresent(fault -> {
            throw new Refused(setting.word() + " '" + Terminal.harmless(Terminal.shortened(value)) + "' " + fault);
        });
        return switch (setting) {
            case LOGO, STORE, KNOWLEDGE, DATABASE -> Path.of(value)
                    .toAbsolutePath()
                    .normalize()
                    .toString();
            default -> value;
        };
    }

    /** A setting as it stands: its value, the name of the source that says it, and the same in words. */
    private record Stands(String value, String source, String from) {}

    private Stands stands(Setting setting) {
        for (String name : SettingSources.IN_ORDER) {
            PropertySource<?> source = environment.getPropertySources().get(name);
            Object value = source == null ? null : source.getProperty(setting.property());
            if (value != null) {
                return new Stands(value.toString(), name, from(setting, name));
            }
        }
        return new Stands(setting.otherwise(), "", "the program's own");
    }

    private String from(Setting setting, String source) {
        return switch (source) {
            case SettingSources.RUN -> "option of this run";
            case SettingSources.VARIABLES -> "variable " + setting.variable();
            default -> "settings file";
        };
    }

    /** All settings as JSON. */
    private record Shown(String file, List<One> settings) {}

    private record One(String name, String value, String from) {}

    private Shown json() {
        return new Shown(
                file().path().toString(),
                Stream.of(Setting.values())
                        .map(setting -> {
                            Stands stands = stands(setting);
                            return new One(setting.word(), stands.value(), stands.from());
                        })
                        .toList());
    }

    private SettingsFile file() {
        return new SettingsFile(Path.of(environment.getRequiredProperty("witnessmark.settings.file")));
    }
}
