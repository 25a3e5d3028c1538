package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.PartLine;
import witnessmark.casefile.Reckoned;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.gearbox.Unit;

class ClaimSheetTest {
    private static final Attachment CONE = new Attachment(
            "cone.jpg", "image/jpeg", "ab".repeat(32), 12_000, Optional.of("range-cone-low-burned"), Optional.empty());

    private static byte[] written(Dossier dossier, Kind kind, Form form, Paper paper) {
        return new WriteDocument(TemplateFolder.shipped(), paper).write(dossier, kind, form);
    }

    private static String text(Dossier dossier, Kind kind) {
        return new String(written(dossier, kind, Form.MARKDOWN, Paper.A4), StandardCharsets.UTF_8);
    }

    /** Two findings, one reading and one photograph. */
    private static CaseSheet twoFindings() {
        return new CaseSheet(new CaseId("two-findings"))
                .text(TextField.COMPLAINT, "Grinds going into low range.")
                .finding(new FindingEntry("range-cone-low-burned", FindingState.PRESENT))
                .finding(new FindingEntry("range-cone-high-burned", FindingState.PRESENT))
                .measurement(new Measurement(
                        "range-regulator-pressure",
                        44,
                        Unit.PSI,
                        Optional.of(new Limits(
                                OptionalDouble.of(57), OptionalDouble.of(62), Unit.PSI, "manual of this unit")),
                        ""))
                .attachment(CONE);
    }

    private static Claim claim() {
        return Claim.none()
                .with(Map.of(
                        ClaimField.WORK_ORDER, "W-1007",
                        ClaimField.TRUCK_SERIAL, "TS-1",
                        ClaimField.GEARBOX_SERIAL, "GS-9",
                        ClaimField.FAILED, "2026-02-27",
                        ClaimField.LOOKED, "R. Ortega, technician"))
                .with(new PartLine(
                        "cone, low range", "cone, new", 1, Optional.of(PartLine.Whereabouts.KEPT), "W-1007-1"));
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void the_claim_is_one_page_and_a_record_of_two_findings_four_at_most(Paper paper) {
        CaseFile file = twoFindings().claim(claim()).toCaseFile();
        Dossier dossier = Cases.withoutTruck(Cases.stored(file, Map.of()));

        assertThat(PdfText.of(written(dossier, Kind.CLAIM, Form.PDF, paper)).pages())
                .isEqualTo(1);
        assertThat(PdfText.of(written(dossier, Kind.EVIDENCE, Form.PDF, paper)).pages())
                .isLessThanOrEqualTo(4);
    }

    @Test
    void the_sheet_says_who_what_when_and_where_and_what_was_not_said() {
        Dossier dossier = Cases.stored(twoFindings().claim(claim()).toCaseFile(), Map.of());

        assertThat(text(dossier, Kind.CLAIM))
                .contains("W-1007", "TS-1", "GS-9", "2026-02-27", "R. Ortega, technician")
                .contains("cone, low range", "kept")
                .contains("44 psi, below the low limit", "manual of this unit")
                .containsPattern("Low-range cone burned \\| present \\|\\s+\\| 1 \\|")
                .containsPattern("Not said \\|.*claim number.*engine hours.*correction");
    }

    @Test
    void a_part_put_in_where_none_was_taken_out_says_so() {
        Claim filled = claim().with(new PartLine("", "gasket set", 1, Optional.empty(), ""));

        assertThat(text(Cases.stored(twoFindings().claim(filled).toCaseFile(), Map.of()), Kind.CLAIM))
                .containsPattern("none \\|\\s*gasket set \\|\\s*1 \\|");
    }

    @Test
    void the_evidence_record_begins_with_the_sheet() {
        Dossier dossier = Cases.stored(twoFindings().claim(claim()).toCaseFile(), Map.of());

        assertThat(text(dossier, Kind.EVIDENCE))
                .containsSubsequence("Standing: ", "Unit and claim", "What carries it", "Head of the chain", "## ");
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void a_long_claim_within_the_record_still_ends_on_its_first_sheet(Paper paper) throws IOException {
        Claim filled = claim();
        for (int part = 0; part < 8; part++) {
            filled = filled.with(
                    new PartLine("old part " + part, "new part " + part, 1, Optional.empty(), "tag " + part));
        }
        CaseSheet sheet = twoFindings().claim(filled);
        for (TextField text : List.of(TextField.COMPLAINT, TextField.WORK_DONE)) {
            sheet = sheet.text(text, "a long tale of gears, ".repeat(13));
        }
        for (String sound : List.of("range-cone-high-burned", "range-grinds-into-low", "range-grinds-into-high")) {
            sheet = sheet.finding(new FindingEntry(sound, FindingState.PRESENT));
        }

        byte[] record = written(Cases.stored(sheet.toCaseFile(), Map.of()), Kind.EVIDENCE, Form.PDF, paper);

        try (PDDocument pdf = Loader.loadPDF(record)) {
            PDFTextStripper second = new PDFTextStripper();
            second.setStartPage(2);
            second.setEndPage(2);
            assertThat(second.getText(pdf))
                    .contains("Findings and measurements")
                    .doesNotContain("Head of the chain", "Taken out");
        }
    }

    @Test
    void a_case_that_says_nothing_of_the_claim_and_one_full_of_hostile_text_still_have_their_page() {
        for (CaseFile file : List.of(twoFindings().toCaseFile(), Cases.hostile())) {
            byte[] pdf = written(Cases.stored(file, Map.of()), Kind.CLAIM, Form.PDF, Paper.LETTER);
            assertThat(PdfText.of(pdf).pages()).isEqualTo(1);
        }
    }

    /** The strongest finding may be one that nobody saw: the sheet says what it was computed to be, against which bound. */
    @Test
    void what_was_computed_and_carries_the_cause_stands_beside_what_was_seen() {
        CaseFile file = new CaseSheet(new CaseId("computed"))
                .finding(new FindingEntry("range-cone-low-burned", FindingState.PRESENT))
                .evidence(new Evidence(
                        "hill-shift",
                        Evidence.Kind.COMPUTED,
                        "The reported shift was above its ceiling.",
                        "",
                        Map.of(),
                        Optional.empty(),
                        Map.of("computed-low-range-above-ceiling", FindingState.PRESENT),
                        Map.of(),
                        Optional.empty(),
                        Map.of(
                                "computed-low-range-above-ceiling",
                                new Reckoned(
                                        71,
                                        Unit.KILOMETRE_PER_HOUR,
                                        27.5,
                                        Unit.KILOMETRE_PER_HOUR,
                                        Reckoned.Outcome.PRESENT))))
                .toCaseFile();

        assertThat(text(Cases.stored(file, Map.of()), Kind.CLAIM))
                .containsPattern(
                        "\\| Computed: low range at that speed is above its ceiling \\| 71 km/h.*: present \\(computed\\) \\|"
                                + " held against 27\\\\?\\.5 km/h")
                .doesNotContain("Not looked at: Computed");
    }

    @Test
    void a_value_beyond_its_limit_stands_for_the_finding_that_follows_with_its_photograph() {
        CaseFile file = twoFindings()
                .finding(new FindingEntry("regulator-outlet-low", FindingState.PRESENT))
                .attachment(new Attachment(
                        "gauge.jpg",
                        "image/jpeg",
                        "cd".repeat(32),
                        12_000,
                        Optional.of("regulator-outlet-low"),
                        Optional.empty()))
                .toCaseFile();

        assertThat(text(Cases.stored(file, Map.of()), Kind.CLAIM))
                .containsPattern("\\| Air pressure[^|]*\\| 44 psi[^|]*\\|[^|]*\\| 2 \\|")
                .doesNotContain("| "
                        + Cases.DIAGNOSIS
                                .knowledge()
                                .findings()
                                .get("regulator-outlet-low")
                                .title() + " |");
    }

    /** Two burned cones say the same, so that each alone weighs nothing; the photograph of one is what a clerk looks for. */
    @Test
    void a_mark_of_the_cause_that_was_photographed_stands_on_the_sheet() {
        CaseSheet sheet = new CaseSheet(Cases.sample("range-knob-moved-in-neutral-logged"))
                .attachment(CONE)
                .attachment(new Attachment(
                        "pin.jpg",
                        "image/jpeg",
                        "cd".repeat(32),
                        12_000,
                        Optional.of("log-speed-data-believable"),
                        Optional.empty()));

        assertThat(text(Cases.stored(sheet.toCaseFile(), Map.of()), Kind.CLAIM))
                .containsPattern("Low-range cone burned \\| present \\|\\s+\\| 1 \\|")
                .contains("Log: range changed while long in neutral on the move | present")
                .doesNotContain("Low-range cone burned: ", "believable");
    }

    @Test
    void a_photograph_of_a_part_seen_sound_is_not_said_to_show_the_damage() {
        CaseSheet sheet = twoFindings().finding(new FindingEntry("range-cone-low-burned", FindingState.ABSENT));

        assertThat(text(Cases.stored(sheet.toCaseFile(), Map.of()), Kind.EVIDENCE))
                .contains("Low-range cone burned: absent: looked at, sound");
    }

    /** Debris left at a rebuild dents races and leaves end play alone; a value beyond its limit cannot carry it. */
    @Test
    void a_value_that_speaks_against_the_cause_does_not_carry_it() {
        CaseSheet sheet = new CaseSheet(new CaseId("dented"));
        Stream.of(
                        "repaired-lately",
                        "fault-since-repair",
                        "noise-all-gears-engine-speed",
                        "noise-neutral-pedal-up",
                        "races-dented-by-particles",
                        "magnet-flakes",
                        "spalling-in-load-zone")
                .forEach(id -> sheet.finding(new FindingEntry(id, FindingState.PRESENT)));
        Stream.of("oil-overdue", "high-mileage", "suction-screen-choked", "oil-water-proved", "debris-source-in-box")
                .forEach(id -> sheet.finding(new FindingEntry(id, FindingState.ABSENT)));
        String text = text(
                Cases.stored(
                        sheet.measurement(new Measurement(
                                        "countershaft-endplay",
                                        0.675,
                                        Unit.MILLIMETRE,
                                        Optional.of(new Limits(
                                                OptionalDouble.of(0.1),
                                                OptionalDouble.of(0.3),
                                                Unit.MILLIMETRE,
                                                "manual of this unit")),
                                        ""))
                                .toCaseFile(),
                        Map.of()),
                Kind.CLAIM);

        assertThat(text)
                .contains("Speaks against it: Front countershaft end play: 0.675 mm, above the high limit")
                .contains("Suction screen choked: can come with it, is not so")
                .doesNotContain("| Front countershaft end play |", "(absent)");
    }

    @Test
    void an_undecided_case_claims_nothing_and_says_so_once() {
        String sheet = text(
                Cases.stored(
                        new CaseSheet(new CaseId("undecided"))
                                .vehicle(new Vehicle(
                                        "41",
                                        "TS-33",
                                        "",
                                        OptionalDouble.empty(),
                                        OptionalDouble.empty(),
                                        OptionalDouble.empty(),
                                        ""))
                                .finding(new FindingEntry("hubs-scored-several-gears", FindingState.PRESENT))
                                .finding(new FindingEntry("scoring-in-layers", FindingState.UNSURE))
                                .toCaseFile(),
                        Map.of()),
                Kind.CLAIM);

        assertThat(sheet)
                .containsOnlyOnce("annot be told yet")
                .containsOnlyOnce("TS-33")
                .containsOnlyOnce("Old and new scoring in layers")
                .contains("What was found", "Not settled: ")
                .doesNotContain("What carries it", "Speaks against it", "truck serial number;");
    }

    /** With "ff" drawn as one sign a hash copied from paper is not the hash; Unicode has such signs at FB00 to FB06. */
    @Test
    void no_letters_are_joined_on_paper() throws IOException {
        CaseFile file = twoFindings()
                .text(TextField.COMPLAINT, "Stiff off the floor, ff ffi fi fl.")
                .toCaseFile();
        List<String> joined = new ArrayList<>();
        try (PDDocument pdf = Loader.loadPDF(written(Cases.stored(file, Map.of()), Kind.CLAIM, Form.PDF, Paper.A4))) {
            PDFTextStripper signs = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition sign) {
                    sign.getUnicode()
                            .chars()
                            .filter(c -> c >= 0xFB00 && c <= 0xFB06)
                            .forEach(c -> joined.add(Character.toString(c)));
                    super.processTextPosition(sign);
                }
            };
            assertThat(signs.getText(pdf)).contains("Stiff off the floor, ff ffi fi fl.");
        }
        assertThat(joined).isEmpty();
    }
}
