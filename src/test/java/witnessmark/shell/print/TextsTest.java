package witnessmark.shell.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import witnessmark.interview.Stage;

/** The message bundles: nothing asked for is missing, nothing is left over, and both languages say the same things. */
class TextsTest {
    private static final Path BUNDLES = Path.of("src/main/resources/messages");
    private static final Path SHELL = Path.of("src/main/java/witnessmark/shell");
    private static final Pattern QUOTED = Pattern.compile("\"([a-z]+[a-z0-9.-]*)\"");
    /** Keys that are put together: the part before the last point, or the whole family. */
    private static final Set<String> FAMILIES = Set.of("intake.", "choice.", "state.", "weight.", "keys.", "label.");

    private static Properties bundle(String name) throws IOException {
        Properties texts = new Properties();
        try (Reader reader = Files.newBufferedReader(BUNDLES.resolve(name + ".properties"))) {
            texts.load(reader);
        }
        return texts;
    }

    private static Set<String> quotedInTheShell() throws IOException {
        Set<String> quoted = new TreeSet<>();
        try (Stream<Path> files = Files.walk(SHELL)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                QUOTED.matcher(Files.readString(file)).results().forEach(m -> quoted.add(m.group(1)));
            }
        }
        return quoted;
    }

    @Test
    void the_driver_is_told_the_same_things_in_both_languages() throws IOException {
        Properties english = bundle("driver");
        Properties spanish = bundle("driver_es");
        assertThat(spanish.stringPropertyNames()).isEqualTo(english.stringPropertyNames());
        english.stringPropertyNames()
                .forEach(key ->
                        assertThat(spanish.getProperty(key)).isNotBlank().isNotEqualTo(english.getProperty(key)));
    }

    @Test
    void no_text_is_left_over() throws IOException {
        Set<String> quoted = quotedInTheShell();
        for (String name : new String[] {"interview", "driver"}) {
            assertThat(bundle(name).stringPropertyNames()).allSatisfy(key -> assertThat(
                            quoted.contains(key) || FAMILIES.stream().anyMatch(key::startsWith))
                    .as(key)
                    .isTrue());
        }
    }

    @Test
    void every_stage_and_each_of_its_choices_has_its_text() throws IOException {
        Set<String> keys = bundle("interview").stringPropertyNames();
        for (Stage stage : Stage.values()) {
            String word = stage.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
            if (stage != Stage.CHECKS) {
                assertThat(keys).contains("intake." + word);
            }
            stage.choices().forEach(choice -> assertThat(keys).contains("choice." + word + "." + choice));
        }
    }

    @Test
    void places_in_a_text_are_filled_in_order_and_signs_are_left_alone() {
        Texts wording = new Texts(Texts.Language.SPANISH);
        assertThat(wording.text("place.open", "Shift housing off", "40 min", 4, "0.9"))
                .isEqualTo("Shift housing off: 40 min to get there, 4 checks worth making, together 0.9 bit");
        assertThat(wording.driver("towing")).isEqualTo("Antes del próximo remolque");
        assertThat(wording.text("skipped", "{1}")).contains("{1}");
    }

    @Test
    void a_language_that_is_not_there_is_refused_with_those_that_are() {
        assertThatThrownBy(() -> Texts.Language.of("fr"))
                .isInstanceOf(WrongUsage.class)
                .hasMessage("--language 'fr' is not known; en or es");
    }
}
