package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;

class ShopTemplatesTest {
    private static final Dossier DOSSIER = Cases.of(Cases.sample("scored-hubs-after-a-tow"));

    @TempDir
    Path folder;

    private String html() {
        return new String(
                new WriteDocument(TemplateFolder.of(folder), Paper.A4).write(DOSSIER, Kind.TOWING, Form.HTML),
                StandardCharsets.UTF_8);
    }

    @Test
    void a_shop_puts_its_own_letterhead_over_every_document() throws IOException {
        Files.writeString(folder.resolve("letterhead.html"), "<p>Bench &amp; Sons, {{head.caseId}}</p>");

        assertThat(html())
                .contains("<p>Bench &amp; Sons, scored-hubs-after-a-tow</p>")
                .contains("Towing-prep sheet");
    }

    @Test
    void a_logo_goes_into_the_file_itself() throws IOException {
        Files.write(folder.resolve("logo.png"), new byte[] {(byte) 0x89, 0x50, 0x4e});

        assertThat(html()).contains("src=\"data:image/png;base64,iVBO\"");
    }

    @Test
    void a_template_that_names_what_there_is_not_is_refused_by_name() throws IOException {
        Files.writeString(folder.resolve("towing.html"), "{{mileage}}");

        assertThatThrownBy(this::html)
                .isInstanceOf(DocumentRefused.class)
                .hasMessageContaining("template 'towing.html'")
                .hasMessageContaining("mileage");
    }

    @Test
    void a_tag_that_names_nothing_is_refused() throws IOException {
        Files.writeString(folder.resolve("towing.html"), "<p>{{}}</p>");

        assertThatThrownBy(this::html)
                .isInstanceOf(DocumentRefused.class)
                .hasMessageContaining("template 'towing.html'")
                .hasMessageContaining("names nothing");
    }

    @ParameterizedTest
    @ValueSource(strings = {"{{head..asOf}}", "{{.words}}", "{{#.words}}x{{/.words}}"})
    void a_name_with_nothing_beside_its_dot_is_refused(String tag) throws IOException {
        Files.writeString(folder.resolve("towing.html"), "<p>" + tag + "</p>");

        assertThatThrownBy(this::html)
                .isInstanceOf(DocumentRefused.class)
                .hasMessageContaining("template 'towing.html'")
                .hasMessageContaining("nothing before, between or behind its dots");
    }

    @Test
    void a_template_that_is_not_well_formed_is_refused_for_paper() throws IOException {
        Files.writeString(folder.resolve("letterhead.html"), "<p>no end");

        assertThatThrownBy(() ->
                        new WriteDocument(TemplateFolder.of(folder), Paper.A4).write(DOSSIER, Kind.TOWING, Form.PDF))
                .isInstanceOf(DocumentRefused.class)
                .hasMessageContaining("not well-formed XHTML at line");
    }

    @Test
    void a_document_type_with_an_entity_in_a_template_is_refused_for_paper() throws IOException {
        Files.writeString(
                folder.resolve("letterhead.html"),
                "<!DOCTYPE html [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><p>&x;</p>");

        assertThatThrownBy(() ->
                        new WriteDocument(TemplateFolder.of(folder), Paper.A4).write(DOSSIER, Kind.TOWING, Form.PDF))
                .isInstanceOf(DocumentRefused.class)
                .hasMessageContaining("not well-formed XHTML");
    }

    @Test
    void nothing_outside_the_page_is_loaded_for_paper() throws IOException {
        Path secret = Files.writeString(folder.resolve("secret.txt"), "the secret");
        Files.writeString(folder.resolve("letterhead.html"), "<img src=\"" + secret.toUri() + "\" alt=\"x\"/>");

        byte[] pdf = new WriteDocument(TemplateFolder.of(folder), Paper.A4).write(DOSSIER, Kind.TOWING, Form.PDF);

        assertThat(PdfText.of(pdf).text()).doesNotContain("the secret");
    }

    @Test
    void a_folder_that_is_none_is_refused() {
        assertThatThrownBy(() -> TemplateFolder.of(folder.resolve("nowhere"))).hasMessageContaining("is no folder");
    }
}
