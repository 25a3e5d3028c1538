package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.language.Language;

class HostileTextTest {
    private static final WriteDocument WRITE = new WriteDocument(TemplateFolder.shipped(), Paper.A4);
    private static final Dossier HOSTILE = Cases.stored(Cases.hostile(), java.util.Map.of());

    private static String text(Kind kind, Form form) {
        return new String(WRITE.write(HOSTILE, kind, form), StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void nothing_of_the_case_becomes_an_element_of_the_page(Kind kind) throws Exception {
        String html = text(kind, Form.HTML);

        Document page = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(
                        html.replace("<!DOCTYPE html>\n", "").getBytes(StandardCharsets.UTF_8)));

        assertThat(page.getElementsByTagName("script").getLength()).isZero();
        for (int i = 0; i < page.getElementsByTagName("img").getLength(); i++) {
            assertThat(page.getElementsByTagName("img").item(i).getAttributes().getNamedItem("onerror"))
                    .isNull();
        }
        assertThat(html).doesNotContain("<b>Title");
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void marks_that_turn_the_writing_are_shown_and_not_obeyed(Kind kind) {
        for (Form form : new Form[] {Form.HTML, Form.MARKDOWN}) {
            assertThat(text(kind, form).codePoints())
                    .noneMatch(c -> c == 0x202E || c == 0x202C || c == 0x2066 || c == 0x2069);
        }
    }

    @Test
    void the_complaint_stays_readable_whole_on_the_page() {
        String html = text(Kind.EVIDENCE, Form.HTML);

        assertThat(html)
                .contains("&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt; [U+202E]gnp.eziS[U+202C]")
                .contains(Cases.LONG_WORD)
                .contains("{{head.caseId}}")
                .contains("\uD83D\uDE9A\uD83D\uDD27");
    }

    @Test
    void the_complaint_stays_readable_whole_on_paper() {
        PdfText pdf = PdfText.of(WRITE.write(HOSTILE, Kind.EVIDENCE, Form.PDF));

        assertThat(pdf.unbroken())
                .contains("<script>alert('x')</script>[U+202E]gnp.eziS[U+202C]")
                .contains(Cases.LONG_WORD)
                .contains("[U+1F69A][U+1F527]");
    }

    @Test
    void markdown_takes_nothing_of_the_case_for_its_own_signs() {
        String markdown = text(Kind.EVIDENCE, Form.MARKDOWN);

        assertThat(markdown)
                .contains("\\<script\\>")
                .contains("\\|a\\|b\\|")
                .contains("\\*\\*bold\\*\\*")
                .contains("<br>\\- second line<br>\\# third line<br>")
                .doesNotContainPattern("(?<!\\\\)<script");
        assertThat(markdown.lines().filter(l -> l.startsWith("# "))).hasSize(1);
    }

    @ParameterizedTest
    @EnumSource(
            value = Kind.class,
            names = {"COACHING", "TOWING"})
    void a_card_stays_on_one_page_whatever_the_truck_is_called(Kind kind) {
        assertThat(PdfText.of(WRITE.write(Cases.in(HOSTILE, Language.SPANISH), kind, Form.PDF))
                        .pages())
                .isEqualTo(1);
    }
}
