package witnessmark.shell.settings;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.shell.print.Refused;
import witnessmark.yaml.Faults;
import witnessmark.yaml.FaultyInput;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;
import witnessmark.yaml.YamlReader;

/** The user's own settings: one YAML file of names and values in the folder for configuration. It need not be there. */
public final class SettingsFile {
    private static final int MOST_BYTES = 64 * 1024;

    private final Path path;

    SettingsFile(Path path) {
        this.path = path;
    }

    /** The file where the base directory specification puts it, given these variables and this home folder. */
    public static SettingsFile of(Map<String, String> variables, String home) {
        return new SettingsFile(folder(variables, home).resolve("settings.yaml"));
    }

    /** The folder in which the program keeps what is the user's own; it need not be there. */
    public static Path folder(Map<String, String> variables, String home) {
        String named = variables.getOrDefault("XDG_CONFIG_HOME", "");
        // A relative path would be one in the current folder; the base directory specification ignores it too.
        Path folder = named.startsWith("/") ? Path.of(named) : Path.of(home, ".config");
        return folder.resolve("witnessmark");
    }

    public Path path() {
        return path;
    }

    /** What it says; throws {@link FaultyInput} with every fault where it is not a map of settings that can be. */
    Map<Setting, String> read() {
        if (!Files.exists(path)) {
            return Map.of();
        }
        Faults faults = new Faults();
        Map<Setting, String> settings = new EnumMap<>(Setting.class);
        new YamlReader(MOST_BYTES)
                .read(path, faults)
                .filter(root -> !isEmpty(root))
                .ifPresent(root -> {
                    YamlMap map = root.map("the settings", Setting.words());
                    map.entries().forEach(entry -> Setting.parse(entry.name()).ifPresent(setting -> entry.value()
                            .text(entry.name())
                            .ifPresent(value -> {
                                // A picture that has gone must not keep the program from starting.
                                setting.fault(value)
                                        .filter(fault -> setting != Setting.LOGO)
                                        .ifPresent(fault -> entry.value()
                                                .fault(
                                                        setting.word() + " '"
                                                                + entry.value().shown() + "' " + fault,
                                                        "mend it, or take the line out"));
                                settings.put(setting, value);
                            })));
                });
        faults.throwIfAny();
        return settings;
    }

    private static boolean isEmpty(YamlNode root) {
        return !root.isMap() && !root.isList() && !root.isText();
    }

    /** Sets one line of the file, or takes it out; all other lines stay as they were written. */
    void set(Setting setting, Optional<String> value) {
        Map<Setting, String> wanted = new EnumMap<>(Setting.class);
        wanted.putAll(read());
        value.ifPresentOrElse(v -> wanted.put(setting, v), () -> wanted.remove(setting));
        try {
            List<String> lines = Files.exists(path) ? new ArrayList<>(Files.readAllLines(path)) : new ArrayList<>();
            int at = lineOf(setting, lines);
            if (at >= 0) {
                lines.remove(at);
            }
            value.ifPresent(v -> lines.add(at >= 0 ? at : lines.size(), setting.word() + ": " + quoted(v)));
            write(String.join("\n", lines) + (lines.isEmpty() ? "" : "\n"), wanted);
        } catch (IOException e) {
            throw new Refused("settings file '" + path + "' cannot be written", "check that its folder lets you");
        }
    }

    private static String quoted(String value) {
        return "'" + value.replace("'", "''") + "'";
    }

    private static int lineOf(Setting setting, List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).matches("[\"']?" + setting.word() + "[\"']?\\s*:.*")) {
                return i;
            }
        }
        return -1;
    }

    /** Written beside and moved, and only if it says what it should: a hand may have written values over several lines. */
    private void write(String text, Map<Setting, String> wanted) throws IOException {
        Files.createDirectories(path.getParent());
        Path beside = path.resolveSibling("settings.yaml.new");
        Files.writeString(beside, text, StandardCharsets.UTF_8);
        if (path.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            // It is nobody else's.
            Files.setPosixFilePermissions(beside, PosixFilePermissions.fromString("rw-------"));
        }
        if (!isWhatItShouldBe(beside, wanted)) {
            Files.delete(beside);
            throw new Refused(
                    "settings file '" + path + "' is written in a way that this command does not change",
                    "change it in an editor, one NAME: VALUE a line");
        }
        Files.move(beside, path, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }

    private static boolean isWhatItShouldBe(Path beside, Map<Setting, String> wanted) {
        try {
            return new SettingsFile(beside).read().equals(wanted);
        } catch (FaultyInput e) {
            return false;
        }
    }
}
