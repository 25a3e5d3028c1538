package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.PartLine;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ClaimSet;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.FindingCleared;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.GearboxSet;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.SignedOff;
import witnessmark.casefile.history.TextSet;
import witnessmark.casefile.history.VehicleSet;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.OpenCase;
import witnessmark.diagnosis.SignJudgement;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.language.Language;
import witnessmark.language.Texts;
import witnessmark.truck.ReadyTrucks;

/**
 * Every word on a Spanish page is one that the Spanish texts know, or comes from the case: what stands in the code in
 * English, or has no translation, fails here whatever page it is on.
 */
class SpanishWordsTest {
    private static final WriteDocument WRITE = new WriteDocument(TemplateFolder.shipped(), Paper.A4);
    private static final Diagnosis SPANISH = Cases.DIAGNOSIS.in(Language.SPANISH);
    private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");
    private static final Pattern SAID_BESIDE = Pattern.compile("(?:alt|aria-label|data-label|title)=\"([^\"]*)\"");

    /** Units, names of standards and formats, and the program's own name. */
    private static final Set<String> INTERNATIONAL = Set.of(
            "km",
            "mi",
            "mph",
            "rpm",
            "kj",
            "psi",
            "bar",
            "kpa",
            "mm",
            "min",
            "nm",
            "kib",
            "utc",
            "sha",
            "witnessmark",
            "jpeg",
            "image");

    private static final Set<String> KNOWN = known();

    private static Set<String> known() {
        Stream<String> bundles = Stream.of("document", "coaching", "judgement", "layout")
                .flatMap(name -> Texts.of(name, Language.SPANISH).all().values().stream());
        Stream<String> templates = Stream.of("words.es.txt", "glossary.es.txt")
                .flatMap(name -> TemplateFolder.shipped().text(name).lines())
                .filter(line -> !line.startsWith("#"))
                .map(line -> line.substring(line.indexOf('=') + 1));
        Stream<String> advice = Stream.of(
                        SPANISH.knowledge().coaching(), SPANISH.knowledge().towing())
                .flatMap(all -> all.values().stream())
                .flatMap(a -> Stream.of(a.in(Language.SPANISH), a.why(Language.SPANISH)));
        Stream<String> cautions =
                SPANISH.knowledge().cautions().values().stream().map(c -> c.in(Language.SPANISH));
        Stream<String> rows = Stream.concat(
                SPANISH.knowledge().parts().values().stream().map(p -> p.in(Language.SPANISH)),
                SPANISH.knowledge().prevention().stream().map(p -> p.in(Language.SPANISH)));
        Stream<String> meanings =
                TemplateFolder.shipped().text("glossary.es.txt").lines();
        return Stream.of(
                        bundles,
                        templates,
                        meanings,
                        advice,
                        cautions,
                        rows,
                        SPANISH.knowledge().spanish().values().stream())
                .flatMap(s -> s)
                .flatMap(SpanishWordsTest::words)
                .collect(Collectors.toSet());
    }

    private static Stream<String> words(String text) {
        return WORD.matcher(text).results().map(m -> m.group().toLowerCase(Locale.ROOT));
    }

    /** Words of the page with where they stand; ids and hashes are none. */
    private static Map<String, String> unknown(String html, Set<String> ofCase) {
        // A packet holds the driver's card and the towing sheet in English too.
        String page = html.replaceAll("(?s)<article id=\"[a-z]+-en\".*?</article>", " ")
                .replaceAll("(?s)<li lang=\"en\">.*?</li>", " ")
                .replaceAll("(?s)<style>.*?</style>", " ")
                .replaceAll("data:image/[^\"]*", " ");
        Matcher beside = SAID_BESIDE.matcher(page);
        StringBuilder text = new StringBuilder(page.replaceAll("<[^>]*>", " ").replaceAll("&[a-z#0-9]+;", " "));
        while (beside.find()) {
            text.append(" | ").append(beside.group(1));
        }
        String plain = text.toString()
                .replaceAll("\\b[0-9a-f]{12,64}\\b", " ")
                .replaceAll("\\bwitnessmark:\\S+", " ")
                .replaceAll("\\b[a-z0-9]+(-[a-z0-9]+)+\\b", " ")
                .replaceAll("\\s+", " ");
        Map<String, String> unknown = new TreeMap<>();
        WORD.matcher(plain).results().forEach(m -> {
            String word = m.group().toLowerCase(Locale.ROOT);
            if (!KNOWN.contains(word) && !INTERNATIONAL.contains(word) && !ofCase.contains(word)) {
                unknown.put(word, plain.substring(Math.max(0, m.start() - 40), Math.min(plain.length(), m.end() + 40)));
            }
        });
        return unknown;
    }

    private static void assertSpanish(Dossier dossier, Kind kind, Set<String> ofCase) {
        String html = new String(WRITE.write(dossier, kind, Form.HTML), StandardCharsets.UTF_8);
        assertThat(unknown(html, ofCase)).as(dossier.file().id() + " " + kind).isEmpty();
    }

    private static Dossier dossier(CaseFile file, Optional<CaseHistory> history, MadeWith made) {
        try (OpenCase open = SPANISH.open(file)) {
            return new Dossier(
                    file,
                    history,
                    open.judgement(),
                    open.matrix(),
                    SPANISH.knowledge(),
                    made,
                    Map.of(),
                    List.of(),
                    Optional.of(ReadyTrucks.named("thirteen-ratio")),
                    List.of(),
                    Shop.UNNAMED);
        }
    }

    private static Set<String> ofCase(String... texts) {
        Set<String> words = new LinkedHashSet<>();
        Stream.concat(
                        Stream.of(texts),
                        Stream.of(
                                "sin-palabras",
                                "of a test",
                                ReadyTrucks.named("thirteen-ratio").titleIn("es")))
                .flatMap(SpanishWordsTest::words)
                .forEach(words::add);
        return words;
    }

    /** Driver habit, tow, class pointed to, undetermined, wear, maintenance: one each, and none that other tests lean on. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "disc-burst-rolling-in-low-gear",
                "dead-engine-recovery-logged",
                "rear-seal-again-nut-loose",
                "range-grinds-says-the-driver",
                "layers-and-one-event-both-ticked",
                "cones-worn-even-old-age",
                "gear-oil-with-the-wrong-additives"
            })
    void every_page_of_an_open_case(String sample) {
        CaseFile file = Cases.wordless(sample).toCaseFile();
        Dossier dossier = dossier(file, Optional.of(CaseHistory.leadingTo(file, Cases.STAMP)), Cases.MADE);

        for (Kind kind : Kind.values()) {
            assertSpanish(dossier, kind, ofCase("R. Ortega manual"));
        }
    }

    /** Every kind of entry, a judgement that was signed with other knowledge, and corrections. */
    @ParameterizedTest
    @EnumSource(Kind.class)
    void every_page_of_a_case_signed_otherwise_and_corrected(Kind kind) {
        CaseFile begun = Cases.wordless("clutch-cooked-shaft-straight")
                .finding(new FindingEntry("range-works-backwards", FindingState.ABSENT))
                .finding(new FindingEntry("disc-wrong-or-reversed", FindingState.ABSENT))
                .toCaseFile();
        Judgement judged = Cases.DIAGNOSIS.judge(begun);
        SignedJudgement signed = SignJudgement.of(judged, new MadeWith("of a test", "cd".repeat(32), Optional.empty()));
        Attachment photo = new Attachment(
                "f.jpg", "image/jpeg", "ab".repeat(32), 2048, Optional.of("clutch-facing-burned"), Optional.empty());
        CaseHistory history = CaseHistory.leadingTo(begun, Cases.STAMP)
                .with(
                        List.of(
                                new ClaimSet(claim()),
                                new ClaimSet(new Claim(Map.of(ClaimField.COST, "9 EUR"), List.of())),
                                new VehicleSet(vehicle()),
                                new GearboxSet(begun.gearbox()),
                                new AttachmentAdded(photo),
                                new NoteAdded("zz"),
                                new TextSet(TextField.COMPLAINT, "zz"),
                                new TextSet(TextField.DRIVER_ACCOUNT, "zz"),
                                new TextSet(TextField.WORK_DONE, "zz"),
                                new FindingSet(new FindingEntry("clutch-slips", FindingState.UNSURE, "zz")),
                                new SignedOff(signed),
                                new CorrectedAfterSignOff("zz", new FindingCleared("clutch-facing-burned")),
                                new CorrectedAfterSignOff("zz", new FindingCleared("flywheel-heat-checked")),
                                new CorrectedAfterSignOff("zz", new FindingCleared("log-start-gear-too-high"))),
                        Cases.STAMP);
        Dossier dossier = dossier(history.present(), Optional.of(history), Cases.MADE);

        assertThat(new String(WRITE.write(dossier, kind, Form.MARKDOWN), StandardCharsets.UTF_8))
                .satisfies(text -> {
                    if (kind == Kind.CLAIM) {
                        assertThat(text).contains("Juzgado hoy", "La evidencia es compatible con");
                    }
                });
        assertSpanish(dossier, kind, ofCase("R. Ortega manual zz EUR f.jpg casa"));
        assertSpanish(
                Cases.changed(dossier), kind, ofCase("R. Ortega manual zz EUR f.jpg casa case verify another text"));
    }

    private static Claim claim() {
        Map<ClaimField, String> facts = new LinkedHashMap<>();
        facts.put(ClaimField.WORK_ORDER, "zz");
        facts.put(ClaimField.COST, "7 EUR");
        return new Claim(facts, List.of(new PartLine("zz", "zz", 2, Optional.of(PartLine.Whereabouts.KEPT), "zz")));
    }

    private static Vehicle vehicle() {
        return new Vehicle(
                "zz",
                "zz",
                "zz",
                java.util.OptionalDouble.of(1),
                java.util.OptionalDouble.of(2),
                java.util.OptionalDouble.of(3),
                "zz");
    }

    /** The test sees English where it is: the English page of the same case is full of unknown words. */
    @Test
    void an_english_page_would_be_told() {
        Dossier english = Cases.of(Cases.wordless("cones-worn-even-old-age").toCaseFile());
        String html = new String(WRITE.write(english, Kind.CLAIM, Form.HTML), StandardCharsets.UTF_8);

        assertThat(unknown(html.replace("claim-en", "claim-es"), ofCase("manual")))
                .hasSizeGreaterThan(30);
    }
}
