package witnessmark.knowledge;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class AskWhyTest {
    private static final String CAUSE =
            """
            system: range
            causes:
              - id: site-fork
                title: A fork broke
                class: wear-out
                ask-why: true
                prior: rare
                mechanism: It broke.
                links: [{ finding: range-grinds-into-low, strength: often }]
                sources: [common-practice]
            """;

    @Test
    void nothing_can_be_asked_of_why_where_no_circumstance_turns_the_class() throws Exception {
        List<KnowledgeFile> shipped = KnowledgeFolder.files(Path.of("knowledge-base"));
        KnowledgeFile site = new KnowledgeFile("causes/site.yaml", CAUSE.getBytes(UTF_8));

        assertThatThrownBy(() -> new KnowledgeLoader().load(List.of(shipped, List.of(site))))
                .hasMessageContaining("causes/site.yaml:6:14 ask-why without class-when leaves nothing to ask; add the"
                        + " circumstances that turn its class");
    }
}
