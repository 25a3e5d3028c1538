package witnessmark.yaml;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class YamlNodeTest {
    private final Faults faults = new Faults();

    private YamlNode root(String text) {
        return new YamlReader(1_000_000)
                .read("a.yaml", text.getBytes(UTF_8), faults)
                .orElseThrow();
    }

    private YamlMap map(String text) {
        return root(text).map("a thing");
    }

    private List<String> faultsOf(String text, Consumer<YamlMap> reading) {
        reading.accept(map(text));
        return Told.by(faults);
    }

    @Test
    void a_text_is_given_as_written_or_without_its_outer_blanks() {
        YamlMap map = map("a: \" x \"\nb: |\n  one\n  two\nc: \"x\\r\\ny\\rz\"\n");

        assertThat(map.written("a")).isEqualTo(" x ");
        assertThat(map.text("a")).isEqualTo("x");
        assertThat(map.written("b")).isEqualTo("one\ntwo\n");
        assertThat(map.written("c")).isEqualTo("x\ny\nz");
        assertThat(map.written("none")).isEmpty();
        assertThat(map.textOr("none", "other")).isEqualTo("other");
        assertThat(Told.by(faults)).isEmpty();
    }

    @Test
    void flags_are_true_or_false_or_what_stands_for_none() {
        YamlMap map = map("yes: true\nno: false\nodd: maybe\n");

        assertThat(map.flagOr("yes", false)).isTrue();
        assertThat(map.flagOr("no", true)).isFalse();
        assertThat(map.flagOr("none", true)).isTrue();
        assertThat(map.flagOr("none", false)).isFalse();
        assertThat(map.flagOr("odd", true)).isTrue();
        assertThat(Told.by(faults)).singleElement().asString().contains("'maybe' is not known");
    }

    @Test
    void a_map_gives_its_names_and_values_in_order_and_its_lists_as_texts() {
        YamlMap map = map("b: [ ' one ', two ]\na: text\n");

        assertThat(map.names()).containsExactly("b", "a");
        assertThat(map.entries()).extracting(YamlMap.Entry::name).containsExactly("b", "a");
        assertThat(map.entries()).extracting(e -> e.key().line()).containsExactly(1, 2);
        assertThat(map.texts("b")).containsExactly("one", "two");
        assertThat(map.texts("none")).isEmpty();
        assertThat(map.textOr("a", "other")).isEqualTo("text");
        assertThat(map.owner().line()).isEqualTo(1);
    }

    @Test
    void a_value_is_a_map_a_list_or_a_text() {
        YamlMap map = map("m: { x: 1 }\nl: [ 1 ]\nt: word\n");

        assertThat(map.entries().stream().map(e -> e.value().isMap())).containsExactly(true, false, false);
        assertThat(map.entries().stream().map(e -> e.value().isList())).containsExactly(false, true, false);
        assertThat(map.entries().stream().map(e -> e.value().isText())).containsExactly(false, false, true);
    }

    @Test
    void a_member_is_found_by_its_name_alone() {
        YamlNode root = root("x: 1\ny: 2\n");

        assertThat(root.member("y").orElseThrow().shown()).isEqualTo("2");
        assertThat(root.member("z")).isEmpty();
        assertThat(map("t: word\n").get("t").orElseThrow().member("t")).isEmpty();
    }

    @Test
    void as_many_as_are_taken_are_taken() {
        YamlMap map = map("names: { a: 1, b: 2 }\nlist: [ 1, 2 ]\n");

        assertThat(map.get("names")
                        .orElseThrow()
                        .named("thing", 2, YamlNode::shown)
                        .names())
                .containsExactly("a", "b");
        assertThat(map.get("list").orElseThrow().items("list", 2)).hasSize(2);
        assertThat(Told.by(faults)).isEmpty();
    }

    @Test
    void a_key_that_is_not_among_the_known_is_told_when_the_map_is_read() {
        root("title: x\ntitel: y\n").map("a case", List.of("title"));

        assertThat(Told.by(faults)).singleElement().asString().contains("did you mean 'title'");
    }

    @Test
    void faults_are_given_one_by_one_too() {
        root("a: 1\n").fault("is odd", "mend it");

        assertThatThrownBy(faults::throwIfAny).isInstanceOfSatisfying(FaultyInput.class, e -> assertThat(e.faults())
                .hasSize(1));
    }

    @Test
    void lists_and_named_values_may_be_left_empty() {
        YamlMap map = map("list:\nnames:\nword: null\n");

        assertThat(map.items("list")).isEmpty();
        assertThat(map.get("names")
                        .orElseThrow()
                        .named("finding", 9, YamlNode::shown)
                        .names())
                .isEmpty();
        assertThat(map.items("word")).isEmpty();
        assertThat(Told.by(faults)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"3, 3", "3.9, 3.9", "-0.5, -0.5", "+4, 4", ".5, 0.5", "5., 5", "1e3, 1000", "1.5E-2, 0.015", "007, 7"})
    void a_number_is_written_as_the_core_schema_of_yaml_writes_it(String written, double value) {
        assertThat(map("a: " + written + "\n").number("a")).isEqualTo(value);
        assertThat(Told.by(faults)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                ".nan",
                "NaN",
                ".inf",
                "-.inf",
                "Infinity",
                "1e999",
                "-1e999",
                "1d",
                "1f",
                "0x10",
                "0o7",
                "1_000",
                "'4,1'",
                "3.1 bar",
                "..5",
                "e5",
                "'.'",
                "'1e'",
                "'٣'",
                "１２"
            })
    void what_is_no_finite_number_in_digits(String written) {
        OptionalDouble number = map("a: " + written + "\n").numberIfGiven("a");

        assertThat(number).isEmpty();
        assertThat(Told.by(faults))
                .containsExactly("a.yaml:1:4 a: '" + written.replace("'", "")
                        + "' is not a number; write digits with a point, such as 3.9, without unit or separators");
    }

    @Property(tries = 500)
    void every_finite_number_that_java_writes_reads_back(@ForAll double value) {
        assertThat(PlainText.number(String.valueOf(value))).hasValue(value);
    }

    @Test
    void a_number_of_very_many_digits_is_refused_without_being_worked_out() {
        assertThat(PlainText.number("9".repeat(300)).orElseThrow()).isCloseTo(1e300, within(1e286));
        assertThat(PlainText.number("0".repeat(401))).isEmpty();
    }

    @Test
    void a_compiled_document_reads_back_with_its_places() throws IOException {
        YamlNode given = root("a: x\nb:\nc: [1, { d: \"\" }]\n? [odd]\n: y\n");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();

        CompiledYaml.write(List.of(new CompiledYaml.Document("a.yaml", given)), new DataOutputStream(bytes));
        List<CompiledYaml.Document> read = CompiledYaml.read(ByteBuffer.wrap(bytes.toByteArray()), faults);

        assertThat(read).hasSize(1);
        assertThat(read.get(0).file()).isEqualTo("a.yaml");
        assertThat(read.get(0).root().tree()).isEqualTo(given.tree());
    }

    @Test
    void a_compiled_document_cut_short_anywhere_is_refused_as_damaged() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        CompiledYaml.write(
                List.of(new CompiledYaml.Document("a.yaml", root("a: x\nb: [1, 2]\n"))), new DataOutputStream(bytes));

        for (int length = 0; length < bytes.size(); length++) {
            ByteBuffer cut = ByteBuffer.wrap(Arrays.copyOf(bytes.toByteArray(), length));
            assertThatThrownBy(() -> CompiledYaml.read(cut, faults))
                    .isInstanceOf(IOException.class)
                    .hasMessage("compiled documents are damaged; build the program anew");
        }
    }

    @Nested
    class Refusals {
        @Test
        void a_key_that_is_not_known_names_the_nearest_or_all() {
            map("titel: x\nqqq: y\n").allow(List.of("title", "case"));

            assertThat(Told.by(faults))
                    .containsExactly(
                            "a.yaml:1:1 'titel' is not a key of a thing; did you mean 'title'?",
                            "a.yaml:2:1 'qqq' is not a key of a thing; use one of title, case");
        }

        @Test
        void a_key_that_stands_twice_names_both_lines_and_the_first_counts() {
            YamlMap map = map("a: 1\nb: 2\na: 3\n");

            assertThat(map.text("a")).isEqualTo("1");
            assertThat(Told.by(faults))
                    .containsExactly("a.yaml:3:1 key 'a' of a thing stands twice (line 1 and here); keep one");
        }

        @Test
        void a_name_that_stands_twice_tells_both_values() {
            root("x: present\ny: absent\nx: absent\nz: [1]\nz: 2\n").named("finding", 9, YamlNode::shown);

            assertThat(Told.by(faults))
                    .containsExactly(
                            "a.yaml:3:1 finding 'x' stands twice (line 1: present, here: absent); keep one",
                            "a.yaml:5:1 finding 'z' stands twice (line 4 and here); keep one");
        }

        @Test
        void a_name_that_is_no_single_word() {
            map("[a]: b\n? { c: d }\n: e\n? \n: f\n");

            assertThat(Told.by(faults))
                    .containsExactly(
                            "a.yaml:1:1 a name must be a single word; write it as name: value",
                            "a.yaml:2:3 a name must be a single word; write it as name: value",
                            "a.yaml:4:2 a name must be a single word; write it as name: value");
        }

        @Test
        void more_names_or_parts_than_are_taken() {
            YamlNode root = root("a: [1, 2, 3]\nb: 2\n");

            assertThat(root.named("finding", 1, YamlNode::shown).names()).isEmpty();
            assertThat(root.map("a thing").get("a").orElseThrow().items("a", 2)).isEmpty();
            assertThat(Told.by(faults))
                    .containsExactly(
                            "a.yaml:1:1 2 findings are given; keep it to 1 at most",
                            "a.yaml:1:4 a has 3 parts; keep it to 2 at most");
        }

        @Test
        void what_is_missing_empty_or_of_another_shape() {
            assertThat(faultsOf("blank: \"\"\nnothing:\nlist: [x]\nword: x\n", map -> {
                        map.text("gone");
                        map.require("value", "3.9");
                        map.text("blank");
                        map.text("nothing");
                        map.text("list");
                        map.items("word");
                        map.get("word").orElseThrow().map("a part");
                        map.get("word").orElseThrow().named("finding", 9, YamlNode::shown);
                    }))
                    .containsExactlyInAnyOrder(
                            "a.yaml:1:1 a thing has no 'gone'; add gone: …",
                            "a.yaml:1:1 a thing has no 'value'; add value: 3.9",
                            "a.yaml:1:8 blank is empty; write it",
                            "a.yaml:2:9 nothing has no value; write one after it, or take the key out",
                            "a.yaml:3:7 list is not a single value; write one text or number after it",
                            "a.yaml:4:7 word is not a list; write each part on its own line after '- '",
                            "a.yaml:4:7 a part is not a map of keys and values; write it as key: value",
                            "a.yaml:4:7 findings are not a map of names and values; write each as name: value");
        }

        @Test
        void a_map_that_is_none_is_told_once_and_misses_nothing_else() {
            YamlMap map = root("- x\n").map("a thing", List.of("a"));

            assertThat(map.text("a")).isEmpty();
            assertThat(map.number("a")).isZero();
            assertThat(Told.by(faults))
                    .containsExactly("a.yaml:1:1 a thing is not a map of keys and values; write it as key: value");
        }

        @Test
        void a_word_that_is_none_of_those_that_can_be_used() {
            Map<String, Integer> words = new LinkedHashMap<>(Map.of("single", 1));
            words.put("twin", 2);

            assertThat(map("a: twin\n").one("a", words)).contains(2);
            assertThat(faultsOf("a: triple\nb: maybe\n", map -> {
                        map.one("a", words);
                        map.flagOr("b", false);
                        map.get("a").orElseThrow().one("a", t -> Optional.empty(), "a known unit", "bar psi");
                    }))
                    .containsExactly(
                            "a.yaml:1:4 a: 'triple' is not known; use one of single, twin",
                            "a.yaml:1:4 a: 'triple' is not a known unit; use one of bar psi",
                            "a.yaml:2:4 b: 'maybe' is not known; use one of false, true");
        }

        @ParameterizedTest
        @CsvSource({"\\x07, U+0007", "\\e, U+001B", "\\x9b, U+009B", "\\0, U+0000", "\\uFFFE, U+FFFE", "\\uD83D, U+D83D"
        })
        void an_escaped_control_character(String escaped, String told) {
            assertThat(faultsOf("a: \"xy" + escaped + "\"\n", map -> map.written("a")))
                    .containsExactly("a.yaml:1:4 a: character " + told + " at place 3 cannot be kept; remove it");
        }

        @Test
        void a_text_longer_than_is_kept_or_shown() {
            assertThat(faultsOf(
                            "a: " + "x".repeat(20_001) + "\n" + "b: " + "y".repeat(61) + "\n" + "\"k\\n\\e[2J\": 1\n",
                            map -> {
                                map.written("a");
                                map.numberIfGiven("b");
                                map.allow(List.of("a", "b"));
                            }))
                    .containsExactly(
                            "a.yaml:1:4 a: the text has 20001 characters; keep it to 20000 at most",
                            "a.yaml:2:4 b: '" + "y".repeat(60) + "...' is not a number; write digits with a point, such"
                                    + " as 3.9, without unit or separators",
                            "a.yaml:3:1 'kU+000AU+001B[2J' is not a key of a thing; use one of a, b");
        }
    }
}
