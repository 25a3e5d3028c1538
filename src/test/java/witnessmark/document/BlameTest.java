package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;

class BlameTest {
    private static final WriteDocument WRITE = new WriteDocument(TemplateFolder.shipped(), Paper.A4);

    /** A driver (or he, she, they) said to have done it, or to be at fault. */
    private static final Pattern ACCUSATION = Pattern.compile(
            "(?i)\\b(driver|operator)('s)? (did|has(?! to\\b)|had|was|is|must have|caused|abused|misused|shifted|burned|damaged|error|fault|abuse|misuse|to blame)\\b"
                    + "|\\b(blame|guilty|negligen\\w*|careless\\w*|abuse[ds]?|misuse[ds]?)\\b");

    private static final List<String> CLEARING = List.of(
            "although the driver did nothing wrong",
            "The marks are those of abuse, the cause is",
            "bad data mimic abuse",
            "no abuse marks",
            "(clutch-brake-abuse)");

    static List<CaseFile> unproved() {
        List<CaseFile> files = new java.util.ArrayList<>(ShippedKnowledge.samples().stream()
                .map(d -> d.present())
                .filter(f -> !Cases.of(f).judgement().verdict().classId().equals("driver-habit"))
                .toList());
        files.add(onlyBurnedCones());
        return files;
    }

    /** Both cones burned and nothing else known: a habit is likely, and cannot be told. */
    private static CaseFile onlyBurnedCones() {
        return new CaseSheet(new CaseId("only-burned-cones"))
                .finding(new FindingEntry("range-cone-low-burned", FindingState.PRESENT))
                .finding(new FindingEntry("range-cone-high-burned", FindingState.PRESENT))
                .toCaseFile();
    }

    private static String ownWords(Dossier dossier, Kind kind) {
        CaseFile file = dossier.file();
        String text = new String(WRITE.write(dossier, kind, Form.MARKDOWN), StandardCharsets.UTF_8);
        // What people told is theirs to say.
        for (String told : List.of(file.complaint(), file.driverAccount(), file.title(), file.workDone())) {
            text = told.isEmpty() ? text : text.replace(told, "");
        }
        // Sentences of the knowledge base that clear the driver, or tell marks apart, and an id.
        for (String clearing : CLEARING) {
            text = text.replace(clearing, "");
        }
        return text;
    }

    @ParameterizedTest
    @MethodSource("unproved")
    void no_document_says_that_the_driver_did_it_where_the_judgement_does_not(CaseFile file) {
        Dossier dossier = Cases.of(file);
        for (Kind kind : List.of(Kind.BENCH, Kind.EXPLANATION, Kind.EVIDENCE, Kind.CLAIM, Kind.COACHING, Kind.TOWING)) {
            assertThat(ACCUSATION.matcher(ownWords(dossier, kind)).results().map(m -> m.group()))
                    .as(file.id() + " " + kind)
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("unproved")
    void a_blaming_cause_that_is_not_concluded_is_said_not_to_be(CaseFile file) {
        Dossier dossier = Cases.of(file);
        String text = new String(WRITE.write(dossier, Kind.EXPLANATION, Form.MARKDOWN), StandardCharsets.UTF_8);

        dossier.judgement().causes().stream()
                .filter(c -> c.classId().equals("driver-habit") && c.standing() != RankedCause.Standing.CONCLUDED)
                .filter(c -> text.contains("### " + c.title() + "\n"))
                .forEach(c -> {
                    String after = text.substring(text.indexOf("### " + c.title() + "\n"));
                    assertThat(after.substring(0, 400))
                            .containsIgnoringCase("not concluded")
                            .contains("If this was at work: ");
                });
    }

    @Test
    void burned_cones_alone_cannot_be_told_and_every_document_says_so() {
        Dossier dossier = Cases.of(onlyBurnedCones());
        assertThat(dossier.judgement().verdict().isDetermined()).isFalse();

        for (Kind kind : List.of(Kind.BENCH, Kind.EXPLANATION, Kind.EVIDENCE, Kind.CLAIM)) {
            assertThat(ownWords(dossier, kind)).contains("It cannot be told yet.");
        }
    }

    @ParameterizedTest
    @MethodSource("unproved")
    void the_coaching_card_names_no_cause_and_no_verdict(CaseFile file) {
        Dossier dossier = Cases.of(file);
        String card = new String(WRITE.write(dossier, Kind.COACHING, Form.MARKDOWN), StandardCharsets.UTF_8);

        assertThat(card).doesNotContain(dossier.judgement().verdict().sentence());
        dossier.judgement().causes().forEach(c -> assertThat(card).doesNotContain(c.title()));
    }
}
