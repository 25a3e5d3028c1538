package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.language.Language;
import witnessmark.truck.ReadyTrucks;

/**
 * Every document as a browser shows it on a telephone, a tablet and a desk. Contrast by WCAG 2.1, 1.4.3 (4.5 to 1), with
 * relative luminance as defined there; language 3.1.1, text alternatives 1.1.1, reflow 1.4.10 (from memory).
 */
@Tag("long")
class InBrowserTest {
    private static final List<Integer> WIDTHS = List.of(360, 768, 1280);
    private static final WriteDocument WRITE = new WriteDocument(TemplateFolder.shipped(), Paper.A4);

    @TempDir
    static Path folder;

    private static Browser browser;

    @BeforeAll
    static void start() throws Exception {
        Optional<Path> program = Browser.installed();
        assumeTrue(program.isPresent(), "no browser is installed");
        browser = Browser.start(program.get());
    }

    @AfterAll
    static void stop() throws Exception {
        if (browser != null) {
            browser.close();
        }
    }

    private static List<String> faults(String name, byte[] html) throws Exception {
        Path file = Files.write(folder.resolve(name + ".html"), html);
        String script = new String(
                InBrowserTest.class
                        .getResourceAsStream("/document/look-at-page.js")
                        .readAllBytes(),
                StandardCharsets.UTF_8);
        List<String> faults = new ArrayList<>();
        for (int width : WIDTHS) {
            browser.open(file, width);
            browser.lines(script).forEach(fault -> faults.add(name + " at " + width + ": " + fault));
        }
        return faults;
    }

    private static Map<String, Dossier> dossiers() {
        Map<String, Dossier> all = new LinkedHashMap<>();
        all.put("told", Cases.stored(Cases.sample("clash-in-every-gear-all-else-sound"), Map.of()));
        all.put("hostile", Cases.stored(Cases.hostile(), Map.of()));
        all.put("broken", Cases.changed(Cases.stored(Cases.sample("jumps-out-several-suspects"), Map.of())));
        return all;
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void nothing_runs_off_and_everybody_can_read_it(Kind kind) throws Exception {
        List<String> faults = new ArrayList<>();
        for (Map.Entry<String, Dossier> one : dossiers().entrySet()) {
            for (Language language : Language.values()) {
                byte[] html = WRITE.write(Cases.in(one.getValue(), language), kind, Form.HTML);
                faults.addAll(faults(kind.word() + "-" + one.getKey() + "-" + language.tag(), html));
            }
        }

        assertThat(faults).isEmpty();
    }

    @Test
    void a_trucks_card_too() throws Exception {
        List<String> faults = new ArrayList<>();
        for (Language language : Language.values()) {
            byte[] html = WRITE.card(
                    ReadyTrucks.named("thirteen-ratio"),
                    Cases.DIAGNOSIS.in(language).knowledge(),
                    Cases.MADE,
                    Shop.UNNAMED,
                    Form.HTML,
                    language);
            faults.addAll(faults("card-" + language.tag(), html));
        }

        assertThat(faults).isEmpty();
    }

    @Test
    void the_look_sees_what_it_looks_for() throws Exception {
        String bad = "<!DOCTYPE html><html><head><title>t</title></head><body><h1>one</h1><h1>two</h1><h3>deep</h3>"
                + "<p style='color:#999'>pale</p><img src='data:image/gif;base64,R0lGODlhAQABAAAAACw='/>"
                + "<div style='width:2000px'>wide</div><svg width='100' viewBox='0 0 1000 100'><text y='20' "
                + "font-size='20'>small</text></svg></body></html>";

        assertThat(String.join("\n", faults("bad", bad.getBytes(StandardCharsets.UTF_8))))
                .contains(
                        "language", "h1", "heading", "contrast", "alternative", "wide", "beyond", "letters of 2.0 px");
    }
}
