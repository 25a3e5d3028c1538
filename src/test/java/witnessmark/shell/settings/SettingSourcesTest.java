package witnessmark.shell.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.core.env.ConfigurableEnvironment;
import witnessmark.shell.print.Refused;
import witnessmark.yaml.FaultyInput;

/** Settings come from the run, the named variables and the user's own file, in this order, and from nowhere else. */
class SettingSourcesTest {
    @TempDir
    Path home;

    private ConfigurableEnvironment settings(Map<String, Object> options, Map<String, String> variables) {
        return SettingSources.of(options, variables, home.toString());
    }

    private void file(String text) throws Exception {
        Path file = SettingsFile.of(Map.of(), home.toString()).path();
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    @Test
    void the_run_counts_before_the_variables_and_these_before_the_file() throws Exception {
        file("who: José of the file\nstore: /file\nknowledge: /file\n");

        ConfigurableEnvironment settings = settings(
                Map.of("witnessmark.who", "the run"),
                Map.of("WITNESSMARK_WHO", "a variable", "WITNESSMARK_STORE", "/variable"));

        assertThat(settings.getProperty("witnessmark.who")).isEqualTo("the run");
        assertThat(settings.getProperty("witnessmark.store")).isEqualTo("/variable");
        assertThat(settings.getProperty("witnessmark.knowledge")).isEqualTo("/file");
        assertThat(settings(Map.of(), Map.of()).getProperty("witnessmark.who")).isEqualTo("José of the file");
    }

    @Test
    void variables_that_are_not_named_set_nothing() {
        ConfigurableEnvironment settings = settings(
                Map.of(),
                Map.of(
                        "SPRING_CONFIG_LOCATION", "file:./",
                        "SPRING_APPLICATION_JSON", "{\"witnessmark.who\":\"forged\"}",
                        "LOGGING_CONFIG", "evil.xml",
                        "witnessmark.who", "forged"));

        assertThat(settings.getProperty("spring.config.location")).isNull();
        assertThat(settings.getProperty("spring.application.json")).isNull();
        assertThat(settings.getProperty("logging.config")).isNull();
        assertThat(settings.getProperty("witnessmark.who")).isNull();
    }

    @Test
    void the_file_lies_where_the_base_directory_specification_says_and_never_in_the_current_folder() {
        assertThat(SettingsFile.of(Map.of("XDG_CONFIG_HOME", "/etc/own"), "/home/a")
                        .path())
                .isEqualTo(Path.of("/etc/own/witnessmark/settings.yaml"));
        assertThat(SettingsFile.of(Map.of("XDG_CONFIG_HOME", "."), "/home/a").path())
                .isEqualTo(Path.of("/home/a/.config/witnessmark/settings.yaml"));
    }

    @Test
    void every_fault_of_the_file_is_told_with_its_place() throws Exception {
        file("spring.config.import: evil\npaper: a5\nunits: psi furlong\nlanguage: en\n");

        assertThatThrownBy(() -> settings(Map.of(), Map.of()))
                .isInstanceOf(FaultyInput.class)
                .hasMessageContaining("settings.yaml:1:1 'spring.config.import' is not a key of the settings")
                .hasMessageContaining("settings.yaml:2:8 paper 'a5' is not known; a4 or letter")
                .hasMessageContaining("settings.yaml:3:8 units 'psi furlong' is not known");
    }

    @Test
    void a_variable_or_option_that_cannot_be_is_refused_by_its_name() {
        assertThatThrownBy(() -> settings(Map.of(), Map.of("WITNESSMARK_PAPER", "a3")))
                .isInstanceOf(Refused.class)
                .hasMessage("variable WITNESSMARK_PAPER 'a3' is not known; a4 or letter");
        assertThatThrownBy(() -> settings(Map.of("witnessmark.units", "leagues"), Map.of()))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("--units 'leagues' is not known; both, metric, us");
    }

    @Test
    void a_file_that_is_no_text_is_refused() throws Exception {
        file("");
        Files.write(SettingsFile.of(Map.of(), home.toString()).path(), new byte[] {'w', 'h', 'o', ':', (byte) 0xE9});

        assertThatThrownBy(() -> settings(Map.of(), Map.of()))
                .isInstanceOf(FaultyInput.class)
                .hasMessageContaining("the text is not UTF-8");
    }

    @Test
    void names_in_a_file_of_the_earlier_form_are_not_lost_in_silence() throws Exception {
        file("");
        Path former = SettingsFile.folder(Map.of(), home.toString()).resolve("settings.properties");
        Files.writeString(former, "who = Anna");

        assertThatThrownBy(() -> settings(Map.of(), Map.of()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("write those of '" + former + "' there and remove it");
    }

    @Test
    void setting_one_thing_keeps_every_other_line_as_it_was_written() throws Exception {
        file("# our shop\nwho: Anna\n\nunits: us # the gauges\n");
        SettingsFile file = SettingsFile.of(Map.of(), home.toString());

        file.set(Setting.WHO, Optional.of("O'Brien: # 2"));
        file.set(Setting.SHOP, Optional.of("Grind & Sons"));
        file.set(Setting.UNITS, Optional.empty());

        assertThat(Files.readString(file.path()))
                .isEqualTo("# our shop\nwho: 'O''Brien: # 2'\n\nshop: 'Grind & Sons'\n");
        assertThat(file.read()).isEqualTo(Map.of(Setting.WHO, "O'Brien: # 2", Setting.SHOP, "Grind & Sons"));
    }

    @Test
    void a_password_in_a_variable_is_refused_without_showing_it() {
        assertThatThrownBy(() -> settings(Map.of(), Map.of("WITNESSMARK_DATABASE_PASSWORD", "hidden")))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("the variable WITNESSMARK_DATABASE_PASSWORD is not read")
                .hasMessageNotContaining("hidden");
    }

    @Test
    void a_mistyped_variable_is_refused_with_the_nearest() {
        assertThatThrownBy(() -> settings(Map.of(), Map.of("WITNESSMARK_STROE", "/elsewhere")))
                .isInstanceOf(Refused.class)
                .hasMessage("the variable WITNESSMARK_STROE is none that is read; did you mean WITNESSMARK_STORE?"
                        + " Otherwise unset it");
        assertThatThrownBy(() -> settings(Map.of(), Map.of("WITNESSMARK_TELEVISION", "/elsewhere")))
                .hasMessageContaining("those are WITNESSMARK_WHO, ")
                .hasMessageEndingWith("Otherwise unset it");
    }

    @Test
    void a_file_written_over_several_lines_is_left_alone() throws Exception {
        file("who:\n  Anna\n");
        SettingsFile file = SettingsFile.of(Map.of(), home.toString());

        assertThatThrownBy(() -> file.set(Setting.WHO, Optional.of("Bo")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("change it in an editor");
        assertThat(Files.readString(file.path())).isEqualTo("who:\n  Anna\n");
    }
}
