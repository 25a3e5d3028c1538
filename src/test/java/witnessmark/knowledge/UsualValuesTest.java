package witnessmark.knowledge;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a measure is read against without a limit, as a shop writes it. */
class UsualValuesTest {
    private static List<KnowledgeFile> shipped;

    @BeforeAll
    static void readOnce() throws Exception {
        shipped = KnowledgeFolder.files(Path.of("knowledge-base"));
    }

    private static Measure site(String line) {
        String text = "measures:\n  - id: site-tin\n    title: Tin in the oil\n    unit: mg/kg\n"
                + "    above: oil-copper-high\n    sources: [common-practice]\n    " + line + "\n";
        return new KnowledgeLoader()
                .load(List.of(shipped, List.of(new KnowledgeFile("measures.yaml", text.getBytes(UTF_8)))))
                .measures()
                .get("site-tin");
    }

    @Test
    void figures_are_read_with_where_they_are_from() {
        Measure tin =
                site("usual: { good-to: 10, bad-over: 30, from: our laboratory }\n    rise: { times: 2, from: us }");

        assertThat(tin.usual())
                .contains(new UsualValues(
                        OptionalDouble.empty(),
                        OptionalDouble.of(10),
                        OptionalDouble.empty(),
                        OptionalDouble.of(30),
                        "our laboratory"));
        assertThat(tin.rise()).contains(new Rise(2, 0, "us"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            'usual: { good-to: 10 }'                          | has no 'from'
            'usual: { from: us }'                             | usual names no value; write it as usual:
            'usual: { bad-under: 2, from: us }'               | usual names a side from which nothing follows
            'usual: { good-to: 30, bad-over: 10, from: us }'  | usual has its values out of order
            'rise: { times: 0.5, from: us }'                  | a rise of nothing; write it as rise:
            'rise: { from: us }'                              | a rise of nothing; write it as rise:
            'rise: { times: two, from: us }'                  | 'two' is not a number
            """)
    void what_cannot_be_is_refused_with_its_place(String line, String says) {
        assertThatThrownBy(() -> site(line))
                .hasMessageContaining("measures.yaml:7:")
                .hasMessageContaining(says);
    }
}
