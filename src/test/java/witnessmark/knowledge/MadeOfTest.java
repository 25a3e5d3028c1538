package witnessmark.knowledge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What is made of other findings, and whose doing is left open by a cause: the form, and what is refused. */
class MadeOfTest {
    private static List<KnowledgeFile> shipped;

    @BeforeAll
    static void read() throws IOException {
        shipped = KnowledgeFolder.files(Path.of("knowledge-base"));
    }

    @Test
    void it_is_read_with_its_members_and_opens_a_class_or_a_cause() {
        Finding made = site(
                        "computed",
                        "{ present: [repaired-lately], absent: [fault-since-repair], unless: [early-life] }")
                .findings()
                .get("site-circumstance");

        assertThat(made.madeOf().orElseThrow().members())
                .containsExactly("repaired-lately", "fault-since-repair", "early-life");
        assertThat(made.handsOpen()).containsExactly("assembly", "wrong-timing");
    }

    @Nested
    class Refused {
        @Test
        void one_that_somebody_would_be_asked_for() {
            refused("paper", "{ present: [repaired-lately] }", "'kind: computed'");
        }

        @Test
        void one_that_nothing_found_is_part_of() {
            refused("computed", "{ absent: [repaired-lately] }", "name at least one finding under 'present'");
        }

        @Test
        void a_member_twice() {
            refused("computed", "{ present: [early-life], unless: [early-life] }", "one finding twice");
        }

        @Test
        void a_member_that_is_not_known() {
            refused("computed", "{ present: [repaired-latly] }", "did you mean 'repaired-lately'?");
        }

        @Test
        void a_member_that_is_itself_made_of_others() {
            refused(
                    "computed",
                    "{ present: [repair-not-the-beginning] }",
                    "no finding that is not made of others 'repair-not-the-beginning'");
        }

        @Test
        void another_word() {
            refused("computed", "{ present: [early-life], not: [high-mileage] }", "site.yaml:10");
        }

        private void refused(String kind, String madeOf, String says) {
            assertThatThrownBy(() -> site(kind, madeOf))
                    .hasMessageContaining("site.yaml:")
                    .hasMessageContaining(says);
        }
    }

    private static KnowledgeBase site(String kind, String madeOf) {
        String text =
                """
                system: history
                findings:
                  - id: site-circumstance
                    title: A circumstance
                    ask: Is it so?
                    kind: %s
                    access: papers
                    minutes: 0
                    background: rarely
                    made-of: %s
                    hands-open: [assembly, wrong-timing]
                    sources: [common-practice]
                """
                        .formatted(kind, madeOf);
        KnowledgeFile file = new KnowledgeFile("findings/site.yaml", text.getBytes(StandardCharsets.UTF_8));
        return new KnowledgeLoader().load(List.of(shipped, List.of(file)));
    }
}
