package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.Vehicle;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;
import witnessmark.language.Language;

/** What a case comes to in Spanish: the same judgement, and none of the program's own words left in English. */
class SpanishPapersTest {
    private static final WriteDocument WRITE = new WriteDocument(TemplateFolder.shipped(), Paper.LETTER);
    private static final Pattern ENGLISH =
            Pattern.compile("\\b(the|of|and|with|from|looked|found|unless|which|because|was)\\b");

    private static String text(Dossier dossier, Kind kind) {
        return new String(WRITE.write(dossier, kind, Form.MARKDOWN), StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @ValueSource(strings = {"slow-into-low-low-air", "scored-hubs-after-a-tow", "jumps-out-several-suspects"})
    void no_paper_leaves_a_sentence_of_its_own_in_english(String sample) {
        Dossier spanish =
                Cases.in(Cases.withoutTruck(Cases.of(Cases.wordless(sample).toCaseFile())), Language.SPANISH);

        for (Kind kind : List.of(Kind.EXPLANATION, Kind.CLAIM, Kind.BENCH, Kind.EVIDENCE, Kind.COACHING, Kind.TOWING)) {
            String own = text(spanish, kind).replaceAll("\\([a-z0-9-]+\\)", "").replace("of a test", "");
            assertThat(ENGLISH.matcher(own)
                            .results()
                            .map(m -> own.substring(Math.max(0, m.start() - 60), Math.min(own.length(), m.end() + 40))))
                    .as(kind.word())
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"slow-into-low-low-air", "scored-hubs-after-a-tow", "jumps-out-several-suspects"})
    void the_judgement_is_the_same_in_both_languages(String sample) {
        Judgement english = Cases.DIAGNOSIS.judge(Cases.sample(sample));
        Judgement spanish = Cases.DIAGNOSIS.in(Language.SPANISH).judge(Cases.sample(sample));

        assertThat(spanish.verdict().classId()).isEqualTo(english.verdict().classId());
        assertThat(spanish.verdict().standing()).isEqualTo(english.verdict().standing());
        assertThat(spanish.causes().stream().map(RankedCause::id))
                .isEqualTo(english.causes().stream().map(RankedCause::id).toList());
        assertThat(spanish.verdict().sentence()).isNotEqualTo(english.verdict().sentence());
    }

    @Test
    void values_and_distances_are_said_in_the_shop_s_units_with_what_was_read_behind() {
        CaseFile file = new CaseSheet(Cases.wordless("slow-into-low-low-air").toCaseFile())
                .vehicle(new Vehicle(
                        "41", "", "", OptionalDouble.of(412_000), OptionalDouble.empty(), OptionalDouble.empty(), ""))
                .measurement(new Measurement(
                        "range-regulator-pressure",
                        44,
                        Unit.PSI,
                        Optional.of(new Limits(OptionalDouble.of(57), OptionalDouble.of(62), Unit.PSI, "manual")),
                        ""))
                .toCaseFile();
        Dossier plain = Cases.of(file);
        Dossier metric = of(plain, "metric");

        // 44 psi = 303.4 kPa and 57 psi = 393.0 kPa by the definition of the pound-force and the inch.
        assertThat(text(metric, Kind.CLAIM).replace("\\", ""))
                .contains("3.034 bar (read as 44 psi)")
                .contains("3.93 bar (57 psi) to 4.275 bar (62 psi)");
        // 412,000 km / 1.609344 = 256,005 mi.
        assertThat(text(of(plain, "us"), Kind.CLAIM))
                .containsPattern("256,?005 mi")
                .contains("44 psi");
    }

    private static Dossier of(Dossier plain, String units) {
        return new Dossier(
                plain.file(),
                plain.history(),
                plain.judgement(),
                plain.matrix(),
                plain.knowledge(),
                plain.made(),
                Map.of(),
                List.of(),
                plain.truck(),
                plain.figures(),
                new Shop("North Yard", Optional.empty(), Units.parse(units).orElseThrow()));
    }

    @Test
    void the_shop_s_name_stands_at_the_head_of_its_papers() {
        Dossier named = of(Cases.of(Cases.wordless("slow-into-low-low-air").toCaseFile()), "us");
        assertThat(new String(WRITE.write(named, Kind.EXPLANATION, Form.HTML), StandardCharsets.UTF_8))
                .contains("<span class=\"shop\">North Yard</span>");
    }
}
