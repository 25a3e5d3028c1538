package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.PartLine;
import witnessmark.casefile.TextField;
import witnessmark.document.PdfLines.Line;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.language.Language;

/** How documents fall on pages of paper. */
class PagesTest {
    private static final List<String> SAMPLES =
            List.of("clash-in-every-gear-all-else-sound", "jumps-out-several-suspects");

    private static final int A_DRAWING = 40;

    /** Down a page, its upper margin counted. */
    private static final double NEARLY_EMPTY = 0.28;

    private static final Map<List<Object>, byte[]> PRINTED = new ConcurrentHashMap<>();

    private static byte[] pdf(Dossier dossier, Kind kind, Paper paper) {
        return new WriteDocument(TemplateFolder.shipped(), paper).write(dossier, kind, Form.PDF);
    }

    /** The paper of a stored sample, printed once for all that is asked of it. */
    private static byte[] pdf(String sample, Language language, Kind kind, Paper paper) {
        return PRINTED.computeIfAbsent(
                List.of(sample, language, kind, paper), any -> pdf(stored(sample, language), kind, paper));
    }

    private static Dossier stored(String sample, Language language) {
        return Cases.in(Cases.stored(Cases.sample(sample), Map.of()), language);
    }

    static Stream<Arguments> papers() {
        return SAMPLES.stream()
                .flatMap(sample -> Stream.of(Language.values()).flatMap(language -> Stream.of(Paper.values())
                        .flatMap(paper -> Stream.of(Kind.EXPLANATION, Kind.BENCH, Kind.EVIDENCE)
                                .map(kind -> Arguments.of(sample, language, paper, kind)))));
    }

    @ParameterizedTest
    @MethodSource("papers")
    void no_page_ends_with_a_heading(String sample, Language language, Paper paper, Kind kind) {
        PdfLines read = PdfLines.of(pdf(sample, language, kind, paper));
        List<Line> lines = read.all();
        int pages = lines.stream().mapToInt(Line::page).max().orElseThrow();

        assertThat(lines).anyMatch(Line::bold);
        for (int page = 1; page < pages; page++) {
            assertThat(lines).as("page %d", page).anyMatch(onPage(page));
            List<Line> end = endOf(page, lines);
            // A drawing may stand under a heading; what it says is painted and not text.
            if (end.get(0).down() > 0.75 || read.painted(page) < A_DRAWING) {
                assertThat(end).as("end of page %d", page).noneMatch(Line::bold);
            }
        }
    }

    /** A heading and the one line under it, with what they head overleaf, are as lonely as a heading. */
    @ParameterizedTest
    @EnumSource(Paper.class)
    void a_bench_sheet_begins_its_checks_under_their_heading(Paper paper) {
        for (Language language : Language.values()) {
            List<Line> lines = PdfLines.of(pdf("low-air-and-a-worn-range-yoke", language, Kind.BENCH, paper))
                    .all();
            String lead = language == Language.ENGLISH ? "Outside before teardown" : "Primero por fuera";
            int page = lines.stream()
                    .filter(l -> l.text().startsWith(lead))
                    .mapToInt(Line::page)
                    .findFirst()
                    .orElseThrow();

            assertThat(endOf(page, lines)).as(language.tag()).noneMatch(l -> l.text()
                    .startsWith(lead));
        }
    }

    static Stream<Arguments> packets() {
        return Stream.of(
                        "clash-in-every-gear-all-else-sound",
                        "jumps-out-several-suspects",
                        "scored-hubs-after-a-tow",
                        "range-knob-moved-in-neutral-logged")
                .flatMap(sample -> Stream.of(Language.values()).flatMap(language -> Stream.of(Paper.values())
                        .map(paper -> Arguments.of(sample, language, paper))));
    }

    /** Each sample in another language or on other paper. */
    static Stream<Arguments> onePacketASample() {
        return Stream.of(
                Arguments.of("clash-in-every-gear-all-else-sound", Language.SPANISH, Paper.LETTER),
                Arguments.of("jumps-out-several-suspects", Language.SPANISH, Paper.A4),
                Arguments.of("scored-hubs-after-a-tow", Language.ENGLISH, Paper.LETTER),
                Arguments.of("range-knob-moved-in-neutral-logged", Language.ENGLISH, Paper.A4));
    }

    @Tag("long")
    @ParameterizedTest
    @MethodSource("packets")
    void no_sheet_of_any_packet_is_nearly_empty(String sample, Language language, Paper paper) {
        no_sheet_of_a_packet_is_nearly_empty(sample, language, paper);
    }

    /** What belongs on one page does so in a packet too, and no sheet bears a few lines, or a code, alone. */
    @ParameterizedTest
    @MethodSource("onePacketASample")
    void no_sheet_of_a_packet_is_nearly_empty(String sample, Language language, Paper paper) {
        List<Line> lines =
                PdfLines.of(pdf(sample, language, Kind.PACKET, paper)).all();
        int pages = lines.stream().mapToInt(Line::page).max().orElseThrow();

        for (int page = 1; page <= pages; page++) {
            assertThat(endOf(page, lines).get(0).down())
                    .as("end of page %d", page)
                    .isGreaterThan(NEARLY_EMPTY);
        }
        // The last four papers are a card and a towing sheet in two languages.
        List<Integer> onePaper = IntStream.rangeClosed(pages - 3, pages).boxed().toList();
        assertThat(onePaper).allSatisfy(page -> assertThat(textOf(page, lines)).contains("witnessmark:" + sample));
    }

    static Stream<Arguments> explanations() {
        return papers().filter(a -> a.get()[3] == Kind.EXPLANATION);
    }

    /** A sheet for the legal line alone is read by nobody. */
    @ParameterizedTest
    @MethodSource("explanations")
    void what_the_paper_is_stands_on_one_page_with_the_words_used(
            String sample, Language language, Paper paper, Kind kind) {
        List<Line> lines = PdfLines.of(pdf(sample, language, kind, paper)).all();

        assertThat(pageOf("What this paper is", "Qué es y qué no es", lines))
                .isEqualTo(pageOf("Words used", "Palabras usadas", lines));
    }

    /** A word is told for the page it stands on, or for another word's meaning. */
    @ParameterizedTest
    @MethodSource("explanations")
    void every_word_told_stands_on_the_paper(String sample, Language language, Paper paper, Kind kind) {
        Dossier dossier = stored(sample, language);
        String html = new String(
                new WriteDocument(TemplateFolder.shipped(), paper).write(dossier, kind, Form.HTML),
                StandardCharsets.UTF_8);
        String paperText = html.replaceAll("(?s)<style.*?</style>|<dt>[^<]*</dt>(?=<dd>)", " ")
                .replaceAll("<[^>]*>", " ")
                .toLowerCase(Locale.ROOT);

        assertThat(Pattern.compile("<dt>([^<]*)</dt>(?=<dd>)")
                        .matcher(html.substring(html.indexOf("<dl class=\"glossary\"")))
                        .results()
                        .map(m -> m.group(1).toLowerCase(Locale.ROOT)))
                .isNotEmpty()
                .allMatch(paperText::contains);
    }

    private static int pageOf(String english, String spanish, List<Line> lines) {
        return lines.stream()
                .filter(l -> l.text().startsWith(english) || l.text().startsWith(spanish))
                .mapToInt(Line::page)
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void a_towing_sheet_is_one_page_in_both_languages(Paper paper) {
        for (Language language : Language.values()) {
            assertThat(PdfText.of(pdf("scored-hubs-after-a-tow", language, Kind.TOWING, paper))
                            .pages())
                    .as(language.tag())
                    .isEqualTo(1);
        }
    }

    /** What a technician takes to the truck; a case with much on record is the longest. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "clash-in-every-gear-all-else-sound",
                "jumps-out-several-suspects",
                "low-air-and-a-worn-range-yoke",
                "clean-tow-paper-against-the-log"
            })
    void a_bench_sheet_is_three_pages_at_most_in_both_languages(String sample) {
        for (Language language : Language.values()) {
            assertThat(PdfText.of(pdf(sample, language, Kind.BENCH, Paper.LETTER))
                            .pages())
                    .as(language.tag())
                    .isLessThanOrEqualTo(3);
        }
    }

    private static Predicate<Line> onPage(int page) {
        return line -> line.page() == page;
    }

    /** What stands on the last line of a page. */
    private static List<Line> endOf(int page, List<Line> lines) {
        double last = lines.stream()
                .filter(onPage(page))
                .mapToDouble(Line::down)
                .max()
                .orElseThrow();
        return lines.stream()
                .filter(onPage(page).and(l -> l.down() > last - 0.003))
                .toList();
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void a_record_of_two_findings_with_a_trucks_charts_is_four_pages_in_both_languages(Paper paper) {
        CaseFile two = new CaseSheet(new CaseId("two"))
                .text(TextField.COMPLAINT, "It just slipped")
                .finding(new FindingEntry("clutch-slips", FindingState.PRESENT))
                .finding(new FindingEntry("clutch-facing-burned", FindingState.PRESENT))
                .toCaseFile();

        for (Language language : Language.values()) {
            Dossier dossier = Cases.in(Cases.stored(two, Map.of()), language);
            assertThat(PdfText.of(pdf(dossier, Kind.EVIDENCE, paper)).pages())
                    .as(language.tag())
                    .isLessThanOrEqualTo(4);
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void a_claim_with_every_fact_and_eight_part_lines_ends_on_the_first_page_of_the_record(Paper paper) {
        Map<ClaimField, String> facts = new EnumMap<>(ClaimField.class);
        for (ClaimField field : ClaimField.values()) {
            facts.put(field, value(field));
        }
        Claim claim = IntStream.range(0, 8)
                .boxed()
                .reduce(
                        Claim.none().with(facts),
                        (c, n) -> c.with(new PartLine(
                                "synchronizer, complete, line " + n,
                                "synchronizer, complete, new",
                                1,
                                Optional.of(PartLine.Whereabouts.RETURNED),
                                "W-1007-" + n)),
                        (a, b) -> a);
        CaseFile full = new CaseSheet(Cases.sample("clash-in-every-gear-all-else-sound"))
                .text(TextField.COMPLAINT, "Clashes in every gear, cold and hot, whoever drives. ".repeat(4))
                .text(TextField.WORK_DONE, "Synchronizer, sliding clutches and oil renewed. ".repeat(4))
                .claim(claim)
                .toCaseFile();

        for (Language language : Language.values()) {
            List<Line> lines = PdfLines.of(pdf(Cases.in(Cases.stored(full, Map.of()), language), Kind.EVIDENCE, paper))
                    .all();
            String appendix = lines.stream()
                    .filter(onPage(2))
                    .min(Comparator.comparingDouble(Line::down))
                    .map(Line::text)
                    .orElseThrow();
            assertThat(appendix).isIn("Findings and measurements", "Hallazgos y mediciones");
            assertThat(textOf(1, lines)).contains("W-1007-7");
        }
    }

    private static String value(ClaimField field) {
        return switch (field) {
            case IN_SERVICE, FAILED, REPAIRED -> "2026-03-02";
            case ENGINE_HOURS, LABOUR_HOURS -> "6.5";
            default -> "some words on " + field.word();
        };
    }

    private static String textOf(int page, List<Line> lines) {
        return lines.stream().filter(onPage(page)).map(Line::text).collect(Collectors.joining(" "));
    }

    @Test
    void a_hash_is_copied_from_paper_letter_by_letter() {
        Dossier dossier = Cases.stored(Cases.sample("burned-clutch-on-the-bench"), Map.of());
        String hash = dossier.history().orElseThrow().last().hash();

        for (Kind kind : List.of(Kind.CLAIM, Kind.EVIDENCE, Kind.COACHING)) {
            assertThat(PdfText.of(pdf(dossier, kind, Paper.A4)).unbroken()).contains(hash);
        }
    }
}
