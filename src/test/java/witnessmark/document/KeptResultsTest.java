package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Reckoned;
import witnessmark.casefile.logged.LoggedEvidence;
import witnessmark.casefile.logged.WeighOnce;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.gearbox.Unit;
import witnessmark.language.Language;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.LogRecord.Tally;

/** Results kept with a case are said in the reader's language from their figures; kept words are marked as kept. */
class KeptResultsTest {
    private static final String KEPT = "Palabras guardadas con ello (en inglés): ";
    private static final String TITLE = "Calculado: rango bajo a esa velocidad pasa de su tope";

    private static Evidence shift(Map<String, Reckoned> reckoned) {
        return new Evidence(
                "hill-shift",
                Evidence.Kind.COMPUTED,
                "The reported shift was above its ceiling.",
                "",
                Map.of("road-speed", "71 km/h, assumed: as told at the gate", "ratio-of-gear-4", "3.84"),
                Optional.empty(),
                Map.of("computed-low-range-above-ceiling", FindingState.PRESENT),
                Map.of(),
                Optional.empty(),
                reckoned);
    }

    private static Map<String, Reckoned> figures() {
        return Map.of(
                "computed-low-range-above-ceiling",
                new Reckoned(71, Unit.KILOMETRE_PER_HOUR, 27.5, Unit.KILOMETRE_PER_HOUR, Reckoned.Outcome.PRESENT));
    }

    private static LogRecord starts(long count) {
        return new LogRecord(
                List.of(),
                Optional.empty(),
                80,
                2,
                1.8,
                1.6,
                1.5,
                0,
                Map.of("log-standing-start-high-range", new Tally(count, count, 6)),
                List.of());
    }

    private static String record(Language language, Evidence... results) {
        CaseSheet sheet = new CaseSheet(new CaseId("kept"));
        List.of(results).forEach(sheet::evidence);
        CaseFile file = sheet.toCaseFile();
        return new String(
                new WriteDocument(TemplateFolder.shipped(), Paper.A4)
                        .write(Cases.in(Cases.stored(file, Map.of()), language), Kind.EVIDENCE, Form.MARKDOWN),
                StandardCharsets.UTF_8);
    }

    @Test
    void why_a_figure_was_assumed_stands_with_the_words_kept() {
        assertThat(record(Language.SPANISH, shift(figures())))
                .contains("71 km/h, supuesto", "road speed: 71 km/h, assumed: as told at the gate");
        assertThat(record(Language.ENGLISH, shift(figures())))
                .containsOnlyOnce("71 km/h, assumed: as told at the gate");
    }

    @Test
    void a_computed_result_is_said_in_spanish_from_its_figure_and_bound() {
        assertThat(record(Language.SPANISH, shift(figures())))
                .containsPattern("Resultado: " + TITLE + ": presente; 71 km/h.*contra un límite de 27\\.5 km/h")
                .contains("relación de la velocidad 4", "velocidad de camino")
                .contains(KEPT + "The reported shift was above its ceiling.");
        assertThat(record(Language.ENGLISH, shift(figures())))
                .contains("Result: The reported shift was above its ceiling.")
                .doesNotContain("Words kept with it");
    }

    @Test
    void one_stored_before_figures_were_kept_says_what_follows_and_shows_its_words_as_kept() {
        assertThat(record(Language.SPANISH, shift(Map.of())))
                .contains("Resultado: " + TITLE + ": presente.")
                .contains(KEPT + "The reported shift was above its ceiling.");
    }

    @Test
    void logs_are_said_in_spanish_from_their_counts_alone_and_together() {
        Evidence one = LoggedEvidence.of("log-a", Map.of(), List.of(), starts(1), List.of(), new WeighOnce());
        Evidence other = LoggedEvidence.of("log-b", Map.of(), List.of(), starts(3), List.of(), new WeighOnce());

        assertThat(record(Language.SPANISH, one, other))
                .containsPattern(
                        "Registro: arranques en rango alto \\(visto 1 veces? en 6 arranques desde parado;"
                                + " los registros cuadran \\d+(\\.\\d)? veces mejor con ello; se vio una vez; un hábito se repite\\)")
                .containsPattern("todos los registros del caso[\\s\\S]*visto 4 veces en 12 arranques desde parado")
                .doesNotContain("Resultado: They speak", "Resultado: The logs");
    }
}
