package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.language.Language;
import witnessmark.truck.ReadyTrucks;

class CardsTest {

    private static byte[] card(Kind kind, String truck, Paper paper, Language language) {
        Dossier plain = Cases.stored(Cases.sample("slow-into-low-low-air"), Map.of());
        Dossier dossier = new Dossier(
                plain.file(),
                plain.history(),
                plain.judgement(),
                plain.matrix(),
                plain.knowledge(),
                plain.made(),
                Map.of(),
                List.of(),
                Optional.of(ReadyTrucks.named(truck)),
                List.of(),
                plain.shop());
        return new WriteDocument(TemplateFolder.shipped(), paper).write(Cases.in(dossier, language), kind, Form.PDF);
    }

    @ParameterizedTest
    @CsvSource({
        "COACHING, thirteen-ratio, A4, ENGLISH",
        "COACHING, thirteen-ratio, LETTER, SPANISH",
        "COACHING, nine-ratio, LETTER, ENGLISH",
        "COACHING, ten-ratio, A4, SPANISH",
        "COACHING, eighteen-ratio, LETTER, SPANISH",
        "TOWING, nine-ratio, LETTER, ENGLISH",
        "TOWING, nine-ratio, LETTER, SPANISH"
    })
    void a_card_is_one_page(Kind kind, String truck, Paper paper, Language language) {
        assertThat(PdfText.of(card(kind, truck, paper, language)).pages()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"nine-ratio", "ten-ratio", "thirteen-ratio", "eighteen-ratio"})
    void a_ready_truck_has_a_name_in_the_driver_s_language(String truck) {
        String card = new String(
                new WriteDocument(TemplateFolder.shipped(), Paper.A4)
                        .card(
                                ReadyTrucks.named(truck),
                                Cases.DIAGNOSIS.in(Language.SPANISH).knowledge(),
                                Cases.MADE,
                                Shop.UNNAMED,
                                Form.HTML,
                                Language.SPANISH),
                StandardCharsets.UTF_8);

        assertThat(card)
                .contains("Tractocamión inventado", "witnessmark of a test, conocimiento abab")
                .doesNotContain("Invented", "ratios");
    }

    @ParameterizedTest
    @CsvSource({"ENGLISH, Low range: never above, Always", "SPANISH, Rango bajo: nunca a más de, Siempre"})
    void the_driver_reads_the_figures_of_this_truck_in_the_own_language(
            Language language, String ceiling, String always) {
        String card = PdfText.of(card(Kind.COACHING, "thirteen-ratio", Paper.A4, language))
                .text()
                .replaceAll("\\s+", " ");

        assertThat(card).contains(ceiling, always, "km/h (", "rpm");
    }
}
