package witnessmark.shell.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.document.Paper;
import witnessmark.gearbox.Unit;
import witnessmark.language.Language;
import witnessmark.shell.CommandLine;

/** What a shop sets once is shown with where it comes from, and is what commands then do. */
class SettingsUsedTest {
    /** The smallest PNG: one transparent pixel (form of the file: ISO/IEC 15948). */
    private static final byte[] PIXEL = Base64.getDecoder()
            .decode("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==");

    private static final String CASE = "cones-worn-even-old-age";

    @TempDir
    Path folder;

    @Nested
    class Set {
        private CommandLine program;

        @BeforeEach
        void start() {
            program = new CommandLine(folder.resolve("store"));
            assertThat(run("case", "import", "sample-cases/" + CASE + ".yaml")).contains("is stored");
        }

        @AfterEach
        void stop() {
            program.close();
        }

        private String run(String... words) {
            CommandLine.Run run = program.run(words);
            assertThat(run.messages()).isEmpty();
            return run.out();
        }

        private void set(String name, String value) {
            run("settings", "set", name, value);
            assertThat(run("settings", "show")).contains(value + " (settings file)");
        }

        private String page() throws Exception {
            Path page = folder.resolve("page.html");
            run("document", "explanation", CASE, "--out", page.toString(), "--replace");
            return Files.readString(page);
        }

        @Test
        void the_language_is_that_of_judgements_interview_and_pages() throws Exception {
            set("language", "es");

            assertThat(run("diagnose", CASE)).contains("Dictamen").doesNotContain("Verdict");
            assertThat(run("explain", CASE, "synchro-wear")).contains("Cómo se produce");
            assertThat(run("status", CASE)).contains("Revisar ahora");
            assertThat(page()).contains("lang=\"es\"");
            assertThat(run("diagnose", CASE, "--language", "en")).contains("Verdict");
        }

        /** A4 is 210 by 297 mm (ISO 216), letter 8.5 by 11 in (ANSI/ASME Y14.1); a PDF counts in 1/72 in. */
        @Test
        void the_paper_is_that_of_printed_pages() throws Exception {
            assertThat(mediaBox().getHeight()).isCloseTo(297 * 72 / 25.4f, within(1f));

            set("paper", "letter");

            assertThat(mediaBox().getHeight()).isCloseTo(11 * 72f, within(1f));
        }

        private PDRectangle mediaBox() throws Exception {
            Path page = folder.resolve("page.pdf");
            run("document", "explanation", CASE, "--as", "pdf", "--out", page.toString(), "--replace");
            try (PDDocument pdf = Loader.loadPDF(page.toFile())) {
                return pdf.getPage(0).getMediaBox();
            }
        }

        @Test
        void shop_and_logo_stand_at_the_head_of_pages() throws Exception {
            Path logo = Files.write(folder.resolve("logo.png"), PIXEL);
            set("shop", "Grind and Sons");
            set("logo", logo.toString());

            assertThat(page()).contains("Grind and Sons").contains("data:image/png;base64,");
        }

        @Test
        void the_role_stands_with_every_entry() {
            set("role", "foreman");

            run("case", "note", CASE, "looked again");

            assertThat(run("case", "history", CASE)).contains("tester, foreman: note: looked again");
        }

        /** 44 psi are 3.034 bar (pound and inch by definition). */
        @Test
        void units_are_those_shown() {
            run("case", "measure", CASE, "range-regulator-pressure", "44", "psi");
            set("units", "metric");
            assertThat(run("case", "show", CASE)).containsPattern("3\\.03\\d?\\s+bar\\s+\\(44\\s+psi\\)");

            set("units", "metric psi");
            assertThat(run("case", "show", CASE)).containsPattern("44\\s+psi").doesNotContain("bar (44");
        }
    }

    static Stream<Arguments> settings() {
        return Stream.of(
                Arguments.of("who", "Anna", "Bert", "Cleo", (Function<ShopSettings, Object>) ShopSettings::who, "Cleo"),
                Arguments.of(
                        "role",
                        "a",
                        "b",
                        "c",
                        (Function<ShopSettings, Object>) s -> s.role().orElse(""),
                        "c"),
                Arguments.of("shop", "X", "Y", "Z", (Function<ShopSettings, Object>) ShopSettings::name, "Z"),
                Arguments.of(
                        "language",
                        "en",
                        "en",
                        "es",
                        (Function<ShopSettings, Object>) ShopSettings::language,
                        Language.SPANISH),
                Arguments.of(
                        "paper",
                        "a4",
                        "a4",
                        "letter",
                        (Function<ShopSettings, Object>) ShopSettings::paper,
                        Paper.LETTER),
                Arguments.of(
                        "units",
                        "metric",
                        "metric",
                        "us",
                        (Function<ShopSettings, Object>) s -> s.units().shown(Unit.KILOMETRE),
                        Unit.MILE),
                Arguments.of(
                        "units",
                        "us",
                        "us",
                        "metric",
                        (Function<ShopSettings, Object>) s -> s.units().shown(Unit.INCH),
                        Unit.MILLIMETRE));
    }

    @ParameterizedTest
    @MethodSource("settings")
    void option_before_variable_before_file(
            String name,
            String inFile,
            String inVariable,
            String asOption,
            Function<ShopSettings, Object> read,
            Object expected)
            throws Exception {
        Path file = SettingsFile.of(Map.of(), folder.toString()).path();
        Files.createDirectories(file.getParent());
        String variable = "WITNESSMARK_" + name.toUpperCase(java.util.Locale.ROOT);

        Files.writeString(file, name + ": " + asOption + "\n");
        assertThat(shop(Map.of(), Map.of(), read)).isEqualTo(expected);

        Files.writeString(file, name + ": " + inFile + "\n");
        assertThat(shop(Map.of(), Map.of(variable, asOption), read)).isEqualTo(expected);
        assertThat(shop(Map.of("witnessmark." + name, asOption), Map.of(variable, inVariable), read))
                .isEqualTo(expected);
    }

    private Object shop(
            Map<String, Object> options, Map<String, String> variables, Function<ShopSettings, Object> read) {
        return read.apply(new ShopSettings(SettingSources.of(options, variables, folder.toString())));
    }
}
