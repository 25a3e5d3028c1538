package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import witnessmark.diagnosis.EvidenceMatrix;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;

class FiguresOnPaperTest {
    private static final WriteDocument WRITE = new WriteDocument(TemplateFolder.shipped(), Paper.LETTER);
    private static final Dossier DOSSIER = Cases.stored(Cases.sample("slow-into-low-low-air"), Map.of());
    private static final Pattern FIGURE = Pattern.compile("[-+]?\\d+(\\.\\d+)?");

    @ParameterizedTest
    @EnumSource(
            value = Kind.class,
            names = {"BENCH", "EXPLANATION", "EVIDENCE"})
    void every_figure_of_the_screen_is_on_paper(Kind kind) {
        String markdown = new String(WRITE.write(DOSSIER, kind, Form.MARKDOWN), StandardCharsets.UTF_8);
        PdfText pdf = PdfText.of(WRITE.write(DOSSIER, kind, Form.PDF));

        Set<String> figures = new TreeSet<>();
        FIGURE.matcher(markdown.replace("\\", "")).results().forEach(m -> figures.add(m.group()));

        assertThat(figures).hasSizeGreaterThan(5);
        assertThat(figures).allSatisfy(figure -> assertThat(pdf.unbroken()).contains(figure));
    }

    @Test
    void the_record_holds_measured_values_weights_chances_and_the_last_hash() {
        String paper = PdfText.of(WRITE.write(DOSSIER, Kind.EVIDENCE, Form.PDF)).unbroken();

        assertThat(paper)
                .contains("44psi")
                .contains("57psito62psi")
                .contains("384000km")
                .contains(DOSSIER.history().orElseThrow().last().hash())
                .contains("intact:eachofthe");
        EvidenceMatrix.Row strongest = DOSSIER.matrix().rows().stream()
                .filter(r -> r.decibans().get("maintenance") > 1)
                // A thousand times and more is not told apart.
                .filter(r -> r.decibans().get("maintenance") < 30)
                .findFirst()
                .orElseThrow();
        double factor = Math.pow(10, strongest.decibans().get("maintenance") / 10);
        assertThat(paper)
                .contains(String.format(java.util.Locale.ROOT, factor < 9.95 ? "for×%.1f" : "for×%.0f", factor))
                .contains("for×1000+");
    }
}
