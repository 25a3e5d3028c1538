package witnessmark.language;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.TextField;
import witnessmark.interview.Stage;

/** The texts as data: nothing asked for is missing, nothing is left over, and both languages say the same things. */
class TextsTest {
    private static final Path MESSAGES = Path.of("src/main/resources/messages");
    private static final Path TEMPLATES = Path.of("src/main/resources/document");
    private static final Path MAIN = Path.of("src/main/java/witnessmark");
    private static final Pattern QUOTED = Pattern.compile("\"([a-z]+[a-z0-9.-]*)\"");
    /** Keys that are put together in the program; the part before what is added. */
    private static final Set<String> FAMILIES = Set.of(
            "intake.",
            "choice.",
            "state.",
            "weight.",
            "keys.",
            "tab.",
            "label.",
            "answer.",
            "driver.",
            "card.",
            "state-",
            "found-",
            "read-",
            "teller-",
            "standing-",
            "cause-",
            "change-text-",
            "changed-",
            "evidence-",
            "bench-for-",
            "outcome-",
            "occasion-",
            "input-",
            "thin-",
            "reason-",
            "claim-",
            "damaged-",
            "file-",
            "gap-",
            "photo-",
            "part-",
            "mark.");

    private static final List<String> SENTENCES = List.of("interview", "judgement", "document");

    static Stream<String> bundles() throws IOException {
        try (Stream<Path> files = Files.list(MESSAGES)) {
            return files
                    .map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith("_en.properties"))
                    .map(name -> name.replace("_en.properties", ""))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    private static List<String> places(String text) {
        return Pattern.compile("\\{[^}]*}+")
                .matcher(text)
                .results()
                .map(MatchResult::group)
                .sorted()
                .toList();
    }

    private static Texts templateWords(Language language) throws IOException {
        String name = "words." + language.tag() + ".txt";
        return Texts.parse(name, language, Files.readString(TEMPLATES.resolve(name)));
    }

    private static Set<String> quoted() throws IOException {
        Set<String> quoted = new TreeSet<>();
        try (Stream<Path> files = Files.walk(MAIN)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                QUOTED.matcher(Files.readString(file)).results().forEach(m -> quoted.add(m.group(1)));
            }
        }
        return quoted;
    }

    private static void saysTheSame(Texts english, Texts spanish) {
        assertThat(spanish.keys()).isEqualTo(english.keys());
        assertThat(english.keys())
                .allSatisfy(key -> assertThat(places(spanish.text(key))).as(key).isEqualTo(places(english.text(key))));
        assertThat(english.keys())
                .allSatisfy(key -> assertThat(spanish.text(key).isBlank())
                        .as(key)
                        .isEqualTo(english.text(key).isBlank()));
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void both_languages_say_the_same_things_with_the_same_places(String bundle) {
        saysTheSame(Texts.of(bundle, Language.ENGLISH), Texts.of(bundle, Language.SPANISH));
    }

    @Test
    void the_words_of_the_templates_are_said_in_both_languages() throws IOException {
        saysTheSame(templateWords(Language.ENGLISH), templateWords(Language.SPANISH));
    }

    @Test
    void every_word_that_a_template_asks_for_is_there_and_none_is_left_over() throws IOException {
        Set<String> asked = new TreeSet<>();
        try (Stream<Path> files = Files.list(TEMPLATES)) {
            for (Path file :
                    files.filter(f -> f.toString().matches(".*\\.(html|md)")).toList()) {
                Pattern.compile("words\\.(\\w+)")
                        .matcher(Files.readString(file))
                        .results()
                        .forEach(m -> asked.add(m.group(1)));
            }
        }
        Set<String> said = new TreeSet<>(templateWords(Language.ENGLISH).keys());
        assertThat(said).containsAll(asked);
        said.removeAll(asked);
        assertThat(said).as("words that only the program asks for").allSatisfy(key -> assertThat(key)
                .matches("shop|\\w+Title|coaching(Nothing|Open|Habit|Broken)"));
    }

    @Test
    void no_text_is_left_over() throws IOException {
        Set<String> quoted = quoted();
        for (String bundle : SENTENCES) {
            assertThat(Texts.of(bundle, Language.ENGLISH).keys()).allSatisfy(key -> assertThat(quoted.contains(key)
                            || quoted.contains(key.replaceFirst("^chart-", ""))
                            || FAMILIES.stream().anyMatch(key::startsWith))
                    .as(key)
                    .isTrue());
        }
    }

    @ParameterizedTest
    @EnumSource(TextField.class)
    void every_text_of_a_case_has_the_words_of_its_change(TextField field) {
        assertThat(Texts.of("document", Language.ENGLISH).keys()).contains("change-text-" + field.word());
    }

    @Test
    void every_stage_and_each_of_its_choices_has_its_text() {
        Set<String> keys = Texts.of("interview", Language.ENGLISH).keys();
        for (Stage stage : Stage.values()) {
            String word = stage.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
            if (stage != Stage.CHECKS) {
                assertThat(keys).contains("intake." + word);
            }
            stage.choices().forEach(choice -> assertThat(keys).contains("choice." + word + "." + choice));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"interview", "judgement", "document", "coaching"})
    void spanish_is_not_english_left_standing(String bundle) {
        Texts english = Texts.of(bundle, Language.ENGLISH);
        Texts spanish = Texts.of(bundle, Language.SPANISH);
        Set<String> same = english.keys().stream()
                .filter(key -> english.text(key).equals(spanish.text(key)))
                .filter(key -> english.text(key).replaceAll("\\{[^}]*}+", "").matches("(?s).*\\p{L}{4,}.*"))
                .collect(Collectors.toSet());
        assertThat(same).isEmpty();
    }

    @Test
    void places_are_filled_once_and_signs_in_a_value_are_left_alone() {
        Texts texts = Texts.of("interview", Language.SPANISH);
        assertThat(texts.text("place.open", "Torre de cambios fuera", "40 min", 4))
                .isEqualTo("Torre de cambios fuera: 40 min para llegar ahí, 4 revisiones que valen la pena");
        assertThat(texts.text("skipped", "{0}{1}")).contains("{0}{1}");
    }

    @Test
    void a_text_that_is_not_there_is_an_error_that_names_it() {
        assertThatThrownBy(() -> Texts.of("document", Language.SPANISH).text("no-such-key"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("no text for 'no-such-key'")
                .hasMessageContaining("document_es");
    }
}
