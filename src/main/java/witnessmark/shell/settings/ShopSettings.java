package witnessmark.shell.settings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.springframework.context.annotation.Lazy;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import witnessmark.document.Paper;
import witnessmark.gearbox.Units;
import witnessmark.language.Language;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;

/** The settings of the shop as commands use them, each as it stands now. */
@Component
@Lazy
public class ShopSettings {
    private final Environment environment;

    public ShopSettings(Environment environment) {
        this.environment = environment;
    }

    public Units units() {
        return set(Setting.UNITS).flatMap(Units::parse).orElse(Units.BOTH);
    }

    public Language language() {
        return set(Setting.LANGUAGE).flatMap(Language::parse).orElse(Language.ENGLISH);
    }

    public Paper paper() {
        return set(Setting.PAPER).flatMap(Paper::parse).orElse(Paper.A4);
    }

    /** The units that an option names; the shop's where it is empty; throws {@link WrongUsage} for an unknown word. */
    public Units units(String option) {
        return option.isEmpty()
                ? units()
                : Units.parse(option).orElseThrow(() -> WrongUsage.unknown("--units", option, "metric, us or both"));
    }

    /** The language, as {@link #units(String)}. */
    public Language language(String option) {
        return option.isEmpty()
                ? language()
                : Language.parse(option).orElseThrow(() -> WrongUsage.unknown("--language", option, Language.TAGS));
    }

    /** The paper, as {@link #units(String)}. */
    public Paper paper(String option) {
        return option.isEmpty()
                ? paper()
                : Paper.parse(option).orElseThrow(() -> WrongUsage.unknown("--paper", option, "one of a4, letter"));
    }

    /** The shop's name; empty if it gave none. */
    public String name() {
        return set(Setting.SHOP).orElse("");
    }

    /** The picture beside its name; throws {@link Refused} where the file set is not there. */
    public Optional<Path> logo() {
        Optional<String> logo = set(Setting.LOGO);
        logo.flatMap(Setting.LOGO::fault).ifPresent(fault -> {
            throw new Refused(
                    "logo '" + Terminal.harmless(logo.get()) + "' " + fault,
                    "or take it back: settings set logo --clear");
        });
        return logo.map(Path::of);
    }

    /** What of it stands on papers; throws {@link Refused} where its logo cannot be read. */
    public witnessmark.document.Shop onPaper() {
        return new witnessmark.document.Shop(name(), logo().map(ShopSettings::picture), units());
    }

    private static byte[] picture(Path logo) {
        try {
            return Files.readAllBytes(logo);
        } catch (IOException e) {
            throw new Refused(
                    "logo '" + logo + "' cannot be read",
                    "check that you may, or take it back: settings set" + " logo --clear");
        }
    }

    /** Who makes the entries of this run, and what that person does in the shop, where it is set. */
    public String who() {
        String name = named().orElse(System.getProperty("user.name", "unknown"));
        return name + role().map(role -> ", " + role).orElse("");
    }

    /** Who is named to make the entries; empty where nobody is. */
    public Optional<String> named() {
        return set(Setting.WHO);
    }

    public Optional<String> role() {
        return set(Setting.ROLE);
    }

    private Optional<String> set(Setting setting) {
        return Optional.ofNullable(environment.getProperty(setting.property())).filter(text -> !text.isBlank());
    }
}
