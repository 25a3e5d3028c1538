package witnessmark.shell.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A file is what its name says. */
class FileFormTest {
    private static final List<String> KNOWN = List.of("html", "pdf", "md");

    @Test
    void the_ending_of_the_name_says_the_form_where_none_is_asked_for() {
        assertThat(FileForm.of("", "folder.d/claim.PDF", KNOWN, "html")).isEqualTo("pdf");
        assertThat(FileForm.of("", "claim", KNOWN, "html")).isEqualTo("html");
        assertThat(FileForm.of("", "claim.txt", KNOWN, "html")).isEqualTo("html");
        assertThat(FileForm.of("", "", KNOWN, "html")).isEqualTo("html");
    }

    @Test
    void a_form_asked_for_stands_and_a_name_that_says_another_is_refused() {
        assertThat(FileForm.of("md", "notes.txt", KNOWN, "html")).isEqualTo("md");
        assertThat(FileForm.of("pdf", "claim.pdf", KNOWN, "html")).isEqualTo("pdf");
        assertThat(FileForm.of("docx", "claim.pdf", KNOWN, "html")).isEqualTo("docx");
        assertThatThrownBy(() -> FileForm.of("html", "claim.pdf", KNOWN, "html"))
                .isInstanceOf(WrongUsage.class)
                .hasMessageContaining("claim.pdf")
                .hasMessageContaining("--as pdf");
    }
}
