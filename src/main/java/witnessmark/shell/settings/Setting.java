package witnessmark.shell.settings;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.document.Paper;
import witnessmark.gearbox.Units;
import witnessmark.language.Language;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.yaml.Nearest;

/** Everything that can be set, with what it means, what it may be and what holds where nobody set it. */
public enum Setting {
    WHO("who", "who makes the entries", "the name of the machine's user"),
    ROLE("role", "what that person does in the shop, as in technician", ""),
    UNITS("units", "both, metric, us, or single units behind one of these, as in \"metric psi\"", "both"),
    LANGUAGE(
            "language",
            "en or es: interview, judgements, what is read out to a driver, and pages that leave the shop",
            "en"),
    PAPER("paper", "a4 or letter", "a4"),
    SHOP("shop", "name of the shop, at the head of its pages", ""),
    LOGO("logo", "picture beside the name: a PNG, JPEG or SVG file", ""),
    STORE("store", "folder in which cases are kept", "~/.witnessmark"),
    KNOWLEDGE("knowledge", "folder of a site's own knowledge", ""),
    DATABASE("database", "file that names a database several shops share, instead of the store's folder", "");

    private static final List<String> PICTURES = List.of(".png", ".jpg", ".jpeg", ".svg");

    /** What the name of every variable that is read begins with. */
    static final String PREFIX = "WITNESSMARK_";

    private final String word;
    private final String meaning;
    private final String otherwise;

    Setting(String word, String meaning, String otherwise) {
        this.word = word;
        this.meaning = meaning;
        this.otherwise = otherwise;
    }

    /** Its name in the file and behind {@code settings set}. */
    public String word() {
        return word;
    }

    public String meaning() {
        return meaning;
    }

    /** What holds where nobody set it; empty for nothing. */
    public String otherwise() {
        return otherwise;
    }

    /** The environment variable that sets it. */
    public String variable() {
        return PREFIX + name();
    }

    /** The name under which the program asks for it. */
    String property() {
        return "witnessmark." + word;
    }

    /** The setting so named; throws {@link Refused} with the nearest name if it is none. */
    static Setting of(String word) {
        return parse(word)
                .orElseThrow(() -> new Refused(
                        "'" + Terminal.harmless(Terminal.shortened(word)) + "' is no setting",
                        Nearest.to(word, words())
                                .map(near -> "did you mean " + near + "?")
                                .orElse("known are: " + String.join(", ", words()))));
    }

    static Optional<Setting> parse(String word) {
        return Arrays.stream(values()).filter(s -> s.word.equals(word)).findFirst();
    }

    static List<String> words() {
        return Arrays.stream(values()).map(Setting::word).toList();
    }

    /** The words it can be; empty where any text will do. */
    List<String> choices() {
        return switch (this) {
            case UNITS -> List.of("both", "metric", "us");
            case LANGUAGE -> Arrays.stream(Language.values()).map(Language::tag).toList();
            case PAPER -> Arrays.stream(Paper.values()).map(Paper::word).toList();
            default -> List.of();
        };
    }

    /** What is wrong with a value, as the end of a sentence; empty if nothing is. */
    Optional<String> fault(String value) {
        if (value.isBlank()) {
            return Optional.of("is empty; to take it back: settings set " + word + " --clear");
        }
        if (value.codePoints().anyMatch(Character::isISOControl)) {
            return Optional.of("must be one line of plain text");
        }
        return switch (this) {
            case UNITS -> Units.parse(value).isPresent()
                    ? Optional.empty()
                    : Optional.of("is not known; both, metric, us, or single units of " + Units.words());
            case LANGUAGE, PAPER -> choices().contains(value)
                    ? Optional.empty()
                    : Optional.of("is not known; " + choices().stream().collect(Collectors.joining(" or ")));
            case LOGO -> picture(value);
            default -> Optional.empty();
        };
    }

    private static Optional<String> picture(String value) {
        if (PICTURES.stream().noneMatch(value.toLowerCase(Locale.ROOT)::endsWith)) {
            return Optional.of("is no picture that can be used; give a file that ends in .png, .jpg or .svg");
        }
        try {
            return Files.isReadable(Path.of(value)) && Files.isRegularFile(Path.of(value))
                    ? Optional.empty()
                    : Optional.of("is not a file that can be read; check its path");
        } catch (InvalidPathException e) {
            return Optional.of("cannot be a path here: " + e.getReason());
        }
    }
}
