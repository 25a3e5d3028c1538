package witnessmark.yaml;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class YamlReaderTest {
    private static final int MOST_BYTES = 4_000_000;

    private static YamlNode read(String text) {
        Faults faults = new Faults();
        Optional<YamlNode> root = new YamlReader(MOST_BYTES).read("a.yaml", text.getBytes(UTF_8), faults);
        faults.throwIfAny();
        return root.orElseThrow();
    }

    private static List<String> faultsOf(byte[] bytes) {
        Faults faults = new Faults();
        Optional<YamlNode> root = new YamlReader(MOST_BYTES).read("a.yaml", bytes, faults);
        assertThat(root).isEmpty();
        return Told.by(faults);
    }

    private static List<String> faultsOf(String text) {
        return faultsOf(text.getBytes(UTF_8));
    }

    @Test
    void a_character_of_two_halves_may_stand_anywhere() {
        for (int before = 1_000; before < 1_050; before++) {
            String word = "x".repeat(before) + "\ud83d\ude00";
            assertThat(read("word: " + word + "\nnext: 1\n")
                            .map("a map", List.of("word", "next"))
                            .text("word"))
                    .isEqualTo(word);
        }
    }

    @Test
    void maps_lists_and_texts_keep_their_places() {
        YamlMap map = read("name: Anna\n\nlist:\n  - { deep: 3.9 }\n").map("a thing");

        YamlNode item = map.items("list").get(0);
        assertThat(map.text("name")).isEqualTo("Anna");
        assertThat(item.line()).isEqualTo(4);
        assertThat(item.map("an item").number("deep")).isEqualTo(3.9);
    }

    @Test
    void a_file_is_read_and_as_many_bytes_as_are_taken_are_taken(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("a.yaml"), "a: 1234\n");
        Faults faults = new Faults();

        assertThat(new YamlReader(8)
                        .read(file, faults)
                        .orElseThrow()
                        .map("a thing")
                        .text("a"))
                .isEqualTo("1234");
        assertThat(new YamlReader(7).read(file, faults)).isEmpty();
        assertThat(Told.by(faults)).singleElement().asString().contains("more than 7 bytes");
    }

    @Test
    void json_is_read_too() {
        YamlMap map = read("{\"name\":\"A \\\"b\\\" \\u00e9\",\"list\":[1,true,null]}")
                .map("a thing");

        assertThat(map.text("name")).isEqualTo("A \"b\" é");
        assertThat(map.items("list")).hasSize(3);
    }

    @Test
    void words_that_other_readers_take_for_something_else_stay_text() {
        YamlMap map =
                read("answer: no\ntime: 12:30:45\nport: 0x1F\nmerge: <<\n").map("a thing");

        assertThat(map.text("answer")).isEqualTo("no");
        assertThat(map.text("time")).isEqualTo("12:30:45");
        assertThat(map.text("port")).isEqualTo("0x1F");
        assertThat(map.text("merge")).isEqualTo("<<");
    }

    @Test
    void a_byte_order_mark_is_passed_over() {
        assertThat(read("\uFEFFname: x\n").map("a thing").text("name")).isEqualTo("x");
    }

    @Property(tries = 300)
    void any_bytes_are_read_or_refused_with_a_fault(@ForAll byte[] bytes) {
        Faults faults = new Faults();

        Optional<YamlNode> root = new YamlReader(MOST_BYTES).read("a.yaml", bytes, faults);

        assertThat(root.isEmpty()).isEqualTo(!faults.isEmpty());
    }

    @Property(tries = 300)
    void any_text_is_read_or_refused_with_one_line_free_of_control_characters(@ForAll String text) {
        Faults faults = new Faults();

        Optional<YamlNode> root = new YamlReader(MOST_BYTES).read("a.yaml", text.getBytes(UTF_8), faults);

        assertThat(root.isEmpty()).isEqualTo(!faults.isEmpty());
        assertThat(Told.by(faults)).allMatch(line -> line.chars().noneMatch(Character::isISOControl));
    }

    @Nested
    class Refusals {
        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                textBlock =
                        """
            'a: !!java.net.URL x'  | 1:4 a type tag (!name) is not taken; write the plain value
            'a: !!str x'           | 1:4 a type tag (!name) is not taken; write the plain value
            'a: !own [x]'          | 1:4 a type tag (!name) is not taken; write the plain value
            '!!map { a: b }'       | 1:1 a type tag (!name) is not taken; write the plain value
            'a: ! x'               | 1:4 a type tag (!name) is not taken; write the plain value
            'a: &x [b]'            | 1:4 an anchor (&name) is not taken; put the text in quotes, or take the anchor out
            '&x a: b'              | 1:1 an anchor (&name) is not taken; put the text in quotes, or take the anchor out
            'a: *x'                | 1:4 an alias (*name) is not taken; write the value out
            '<<: *x'               | 1:5 an alias (*name) is not taken; write the value out
            'a: b~---~c: d'        | 2:1 a second document begins here; keep one document in a file
            'a: b~...~---~c: d'    | 3:1 a second document begins here; keep one document in a file
            'a: [b'                | 2:1 this is not YAML: expected ',' or ']', but got <stream end>; check quotes, colons and indentation
            'a: "b'                | 2:1 this is not YAML: found unexpected end of stream; check quotes, colons and indentation
            'a: b: c'              | 1:5 this is not YAML: mapping values are not allowed here; check quotes, colons and indentation
            'a: "\\q"'             | 1:6 this is not YAML: found unknown escape character q(113); check quotes, colons and indentation
            '@a: b'                | 1:1 this is not YAML: found character '@' that cannot start any token. (Do not use...; check quotes, colons and indentation
            """)
        void what_a_plain_data_file_has_no_use_for(String lines, String fault) {
            assertThat(faultsOf(lines.replace('~', '\n') + "\n")).containsExactly("a.yaml:" + fault);
        }

        @ParameterizedTest
        @ValueSource(strings = {"", "\n\n", "# only a remark\n", "\uFEFF"})
        void nothing_at_all(String text) {
            assertThat(faultsOf(text)).containsExactly("a.yaml is empty; write into it or give another file");
        }

        @Test
        void aliases_that_would_grow_without_end() {
            StringBuilder bomb = new StringBuilder("l0: &l0 [x, x]\n");
            for (int i = 1; i < 40; i++) {
                bomb.append("l%d: &l%d [*l%d, *l%d]\n".formatted(i, i, i - 1, i - 1));
            }

            assertThat(faultsOf(bomb.toString()))
                    .containsExactly("a.yaml:1:5 an anchor (&name) is not taken;"
                            + " put the text in quotes, or take the anchor out");
        }

        @Test
        void a_value_that_contains_itself() {
            assertThat(faultsOf("&a [*a]\n"))
                    .containsExactly("a.yaml:1:1 an anchor (&name) is not taken;"
                            + " put the text in quotes, or take the anchor out");
        }

        @ParameterizedTest
        @ValueSource(strings = {"[", "{ a: ", "{ ? "})
        void nesting_deeper_than_any_data(String opening) {
            assertThat(read("[".repeat(12) + "]".repeat(12)).isList()).isTrue();
            assertThat(faultsOf(opening.repeat(500_000)))
                    .singleElement()
                    .asString()
                    .matches("a\\.yaml:1:\\d+ more than 12 maps and lists inside each other; write it flatter");
        }

        @Test
        void more_values_than_any_data() {
            assertThat(faultsOf("[" + "a,".repeat(600_000) + "]"))
                    .containsExactly(
                            "a.yaml:1:1000000 more than 500000 values; take out what does not belong, or split it");
        }

        @Test
        void more_bytes_than_are_taken() {
            assertThat(faultsOf("x".repeat(MOST_BYTES + 1)))
                    .containsExactly("a.yaml has more than 4000000 bytes;"
                            + " take out what does not belong, such as photographs and logs");
        }

        @ParameterizedTest
        @ValueSource(ints = {0x00, 0x07, 0x08, 0x1B, 0x7F, 0x80, 0x9B, 0xFFFE, 0xFFFF})
        void a_raw_control_character(int character) {
            assertThat(faultsOf("a: b\nc: d" + (char) character + "e\n"))
                    .containsExactly("a.yaml:2:5 character %s cannot be kept; remove it"
                            .formatted(String.format("U+%04X", character)));
        }

        @Test
        void a_text_in_another_encoding() {
            assertThat(faultsOf("a: b\nc: caf\u00e9\n".getBytes(ISO_8859_1)))
                    .containsExactly("a.yaml:2:7 the text is not UTF-8; save the file as UTF-8");
            assertThat(faultsOf("a: b\n".getBytes(UTF_16)))
                    .containsExactly("a.yaml:1:1 the text is not UTF-8; save the file as UTF-8");
            assertThat(faultsOf(new byte[] {'a', (byte) 0xC3}))
                    .containsExactly("a.yaml:1:2 the text is not UTF-8; save the file as UTF-8");
        }

        @Test
        void a_file_that_is_not_there_and_a_folder(@TempDir Path folder) throws Exception {
            Faults faults = new Faults();
            YamlReader reader = new YamlReader(10);
            Files.writeString(folder.resolve("long.yaml"), "a: 34567890\n");

            assertThat(reader.read(folder.resolve("none.yaml"), faults)).isEmpty();
            assertThat(reader.read(folder, faults)).isEmpty();
            assertThat(reader.read(folder.resolve("long.yaml"), faults)).isEmpty();

            assertThat(Told.by(faults))
                    .containsExactly(
                            folder.resolve("none.yaml") + " is not there; check the name",
                            folder + " is a folder; name one file in it",
                            folder.resolve("long.yaml") + " has more than 10 bytes;"
                                    + " take out what does not belong, such as photographs and logs");
        }
    }
}
