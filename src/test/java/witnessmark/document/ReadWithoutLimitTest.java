package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.EarlierSample;
import witnessmark.casefile.Measurement;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.gearbox.Unit;
import witnessmark.language.Language;

/** An oil analysis without a limit stands on paper with what it was read against, where that is from and what it came to. */
class ReadWithoutLimitTest {
    private static final Unit MG_KG = Unit.MILLIGRAM_PER_KILOGRAM;
    private static final CaseFile SAMPLES = new CaseSheet(new CaseId("samples"))
            .measurement(new Measurement(
                    "oil-iron",
                    180,
                    MG_KG,
                    Optional.empty(),
                    List.of(new EarlierSample(60, LocalDate.of(2026, 3, 14), OptionalDouble.of(812_000))),
                    ""))
            .measurement(new Measurement("oil-copper", 20, MG_KG))
            .toCaseFile();

    @ParameterizedTest
    @EnumSource(
            value = Kind.class,
            names = {"EVIDENCE", "BENCH"})
    void the_figures_and_where_they_are_from_stand_beside_the_value(Kind kind) {
        assertThat(written(kind, Language.ENGLISH))
                .contains("3 times its own earlier sample of 2026-03-14 (60 mg/kg at 812000 km)")
                .contains("good up to 100 mg/kg, bad above 300 mg/kg (300 published for used industrial gear oil")
                .contains("counts as too high")
                .contains("does not count as too high")
                .doesNotContain("no limit was given");
        assertThat(written(kind, Language.SPANISH))
                .contains("3 veces su propia muestra anterior del 2026-03-14")
                .contains("publicado para aceite usado de engranajes industriales")
                .contains("no cuenta como demasiado alto");
    }

    private static String written(Kind kind, Language language) {
        Dossier dossier = Cases.in(Cases.stored(SAMPLES, Map.of()), language);
        byte[] page = new WriteDocument(TemplateFolder.shipped(), Paper.A4).write(dossier, kind, Form.MARKDOWN);
        return new String(page, StandardCharsets.UTF_8).replace("\\", "");
    }
}
