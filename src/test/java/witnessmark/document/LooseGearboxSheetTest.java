package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.knowledge.TowWay;
import witnessmark.language.Language;

/** Common practice of moving a heavy unit, no source: stand firm, rated lift by its points, strapped, chocked, looked at. */
class LooseGearboxSheetTest {
    private static String sheet(Language language, Optional<TowWay> way) {
        Dossier dossier =
                Cases.in(Cases.stored(Cases.sample("exchange-box-dropped-off-the-pallet"), Map.of()), language);
        return new String(
                new WriteDocument(TemplateFolder.shipped(), Paper.A4, way).write(dossier, Kind.TOWING, Form.MARKDOWN),
                StandardCharsets.UTF_8);
    }

    private static List<String> steps(Language language, Optional<TowWay> way) {
        return sheet(language, way).lines().filter(l -> l.contains("[ ]")).toList();
    }

    @Test
    void it_begins_with_what_keeps_people_safe_and_ends_with_setting_it_down() {
        List<String> steps = steps(Language.ENGLISH, Optional.of(TowWay.LOOSE));

        assertThat(steps).hasSizeGreaterThanOrEqualTo(6);
        assertThat(steps.get(0)).contains("First of all", "neither roll nor tip");
        assertThat(steps).anyMatch(s -> s.contains("rated for its weight") && s.contains("Nobody under it"));
        assertThat(steps).anyMatch(s -> s.contains("input shaft supported") && s.contains("openings capped"));
        assertThat(steps.get(steps.size() - 1)).contains("Last of all", "before the sling goes slack");
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void it_asks_nothing_of_a_truck(Language language) {
        assertThat(sheet(language, Optional.of(TowWay.LOOSE)))
                .doesNotContain(
                        "wheels",
                        "axles",
                        "spring brake",
                        "park brake",
                        "Highest speed",
                        "ruedas",
                        "ejes",
                        "Velocidad máxima");
    }

    @ParameterizedTest
    @CsvSource({
        "ENGLISH, Sheet for moving a loose gearbox, Towing-prep sheet",
        "SPANISH, Hoja para mover una caja suelta, Hoja de preparación para remolque"
    })
    void a_packet_calls_it_by_its_own_title(Language language, String title, String ofTruck) {
        Dossier dossier =
                Cases.in(Cases.stored(Cases.sample("exchange-box-dropped-off-the-pallet"), Map.of()), language);
        String packet = new String(
                new WriteDocument(TemplateFolder.shipped(), Paper.A4, Optional.of(TowWay.LOOSE))
                        .write(dossier, Kind.PACKET, Form.HTML),
                StandardCharsets.UTF_8);

        assertThat(packet).contains(">" + title + "</a>").doesNotContain(ofTruck);
    }

    @ParameterizedTest
    @EnumSource(
            value = TowWay.class,
            mode = EnumSource.Mode.EXCLUDE,
            names = {"LOOSE"})
    void a_truck_s_sheet_asks_nothing_of_a_loose_gearbox(TowWay way) {
        assertThat(steps(Language.ENGLISH, Optional.of(way)))
                .isNotEmpty()
                .noneMatch(s -> s.contains("sling") || s.contains("crate"));
        assertThat(steps(Language.ENGLISH, Optional.empty())).noneMatch(s -> s.contains("sling"));
    }
}
