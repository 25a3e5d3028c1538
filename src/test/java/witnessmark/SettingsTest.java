package witnessmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.core.env.ConfigurableEnvironment;
import witnessmark.shell.print.Refused;

/** Settings come from the run, the named variables and the user's own file, in this order, and from nowhere else. */
class SettingsTest {
    @TempDir
    Path home;

    private ConfigurableEnvironment settings(Map<String, Object> options, Map<String, String> variables) {
        return Settings.of(options, variables, home.toString());
    }

    private void file(String text) throws Exception {
        Path file = Settings.file(Map.of(), home.toString());
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    @Test
    void the_run_counts_before_the_variables_and_these_before_the_file() throws Exception {
        file("who = José of the file\nstore = /file\nknowledge=/file\n");

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

        assertThat(settings.getProperty("spring.config.location")).isEqualTo("classpath:/application.properties");
        assertThat(settings.getProperty("spring.application.json")).isNull();
        assertThat(settings.getProperty("logging.config")).isNull();
        assertThat(settings.getProperty("witnessmark.who")).isNull();
    }

    @Test
    void the_file_lies_where_the_base_directory_specification_says_and_never_in_the_current_folder() {
        assertThat(Settings.file(Map.of("XDG_CONFIG_HOME", "/etc/own"), "/home/a"))
                .isEqualTo(Path.of("/etc/own/witnessmark/settings.properties"));
        assertThat(Settings.file(Map.of("XDG_CONFIG_HOME", "."), "/home/a"))
                .isEqualTo(Path.of("/home/a/.config/witnessmark/settings.properties"));
    }

    @Test
    void a_setting_that_is_not_known_is_refused_with_those_that_are() throws Exception {
        file("spring.config.import = evil\n");

        assertThatThrownBy(() -> settings(Map.of(), Map.of()))
                .isInstanceOf(Refused.class)
                .hasMessageEndingWith("'spring.config.import' is no setting; known are: database.password,"
                        + " database.url, database.user, knowledge, store, who");
    }

    @Test
    void a_file_that_is_no_text_is_refused() throws Exception {
        file("");
        Files.write(Settings.file(Map.of(), home.toString()), new byte[] {'w', 'h', 'o', '=', (byte) 0xE9});

        assertThatThrownBy(() -> settings(Map.of(), Map.of()))
                .isInstanceOf(Refused.class)
                .hasMessageEndingWith("is no UTF-8 text of lines NAME = VALUE; mend or remove it");
    }
}
