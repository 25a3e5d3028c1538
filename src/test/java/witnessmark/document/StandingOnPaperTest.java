package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.SignedJudgement.SignedCause;
import witnessmark.diagnosis.CheckKnown;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.document.page.BenchPage;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;

class StandingOnPaperTest {
    private static final WriteDocument WRITE = new WriteDocument(TemplateFolder.shipped(), Paper.A4);

    private static String text(Dossier dossier, Kind kind) {
        return new String(WRITE.write(dossier, kind, Form.MARKDOWN), StandardCharsets.UTF_8);
    }

    static List<CaseFile> samples() {
        return ShippedKnowledge.samples().stream().map(d -> d.present()).toList();
    }

    private static CaseFile burnedCones(Optional<SignOff> signOff) {
        CaseSheet sheet = new CaseSheet(new CaseId("burned-cones"))
                .finding(new FindingEntry("range-cone-low-burned", FindingState.PRESENT))
                .finding(new FindingEntry("range-cone-high-burned", FindingState.PRESENT));
        signOff.ifPresent(sheet::signedOff);
        return sheet.toCaseFile();
    }

    private static SignOff signedAsTowed() {
        return new SignOff(
                "R. Ortega",
                Instant.parse("2026-03-02T09:00:00Z"),
                Optional.of(new SignedJudgement(
                        "towing-transport",
                        "concluded",
                        Optional.empty(),
                        "The evidence is that of a tow with the driveline turning.",
                        List.of(new SignedCause("towed", "Towed with the driveline turning", "towing-transport", 0.99)),
                        List.of("Towed on its drive wheels"),
                        new MadeWith("of a test", "cd".repeat(32), Optional.empty()))));
    }

    @Test
    void what_was_signed_stands_first_and_what_is_judged_today_beside_it_with_what_changed() {
        Dossier dossier = Cases.of(burnedCones(Optional.of(signedAsTowed())));

        for (Kind kind : List.of(Kind.EXPLANATION, Kind.EVIDENCE, Kind.BENCH)) {
            assertThat(text(dossier, kind))
                    .containsSubsequence(
                            "Signed off by R. Ortega, 2026-03-02 09:00:00 UTC.",
                            "The evidence is that of a tow with the driveline turning.",
                            "Standing: concluded for the class of the cause",
                            "Towed with the driveline turning",
                            "Judged today: ",
                            "Changed since: the knowledge base.");
        }
    }

    /** Another cause of the same class was not concluded with it. */
    @Test
    void of_what_was_signed_only_the_cause_concluded_is_told_as_concluded() {
        SignedJudgement signed = new SignedJudgement(
                "maintenance",
                "concluded",
                Optional.empty(),
                "Maintenance: low air.",
                List.of(
                        new SignedCause(
                                "low-air", "Regulator set or failed low, or supply air low", "maintenance", 0.9),
                        new SignedCause("filter-clogged", "Regulator filter clogged", "maintenance", 0.3)),
                List.of("High-range cone burned", "Regulator filter blocked, wet or oily"),
                new MadeWith("of a test", "cd".repeat(32), Optional.empty()));
        CaseFile burned = burnedCones(
                Optional.of(new SignOff("R. Ortega", Instant.parse("2026-03-02T09:00:00Z"), Optional.of(signed))));
        Dossier dossier = Cases.of(new CaseSheet(burned)
                .finding(new FindingEntry("air-filter-clogged", FindingState.ABSENT))
                .toCaseFile());

        assertThat(text(dossier, Kind.EXPLANATION))
                .containsOnlyOnce("**Judged when signed: concluded.** Chance when signed: 90 %")
                .doesNotContain("Chance when signed: 30 %")
                .contains("For, when signed: Regulator filter blocked, wet or oily (looked at, not so)");
    }

    @Test
    void a_signed_case_with_another_shop_s_own_finding_is_printed_with_what_was_signed() {
        CaseFile file = new CaseSheet(burnedCones(Optional.of(signedAsTowed())))
                .finding(new FindingEntry("their-own-finding", FindingState.PRESENT))
                .toCaseFile();
        Dossier known = Cases.of(CheckKnown.knownPart(file, Cases.DIAGNOSIS.knowledge()));
        Dossier dossier = new Dossier(
                file,
                known.history(),
                known.judgement(),
                known.matrix(),
                known.knowledge(),
                known.made(),
                Map.of(),
                List.of(),
                known.truck(),
                List.of(),
                known.shop());

        for (Kind kind : Kind.values()) {
            assertThat(text(dossier, kind)).isNotEmpty();
        }
        assertThat(text(dossier, Kind.CLAIM))
                .containsSubsequence(
                        "The evidence is that of a tow with the driveline turning.",
                        "Judged today: ",
                        "left out of today's judgement: their-own-finding");
    }

    @Test
    void a_signed_judgement_that_is_still_today_s_stands_alone() {
        assertThat(text(Cases.of(burnedCones(Optional.empty())), Kind.EXPLANATION))
                .contains("It cannot be told yet.")
                .doesNotContain("Judged today", "Signed off", "Standing: ");
    }

    @ParameterizedTest
    @MethodSource("samples")
    void no_cause_that_is_not_concluded_carries_a_chance_or_a_class_in_the_explanation(CaseFile file) {
        String text = text(Cases.of(file), Kind.EXPLANATION);

        text.lines().filter(l -> l.contains("Chance: ")).forEach(l -> assertThat(l)
                .as(file.id().text())
                .matches("\\*\\*(The evidence is consistent with this|Concluded from the evidence)\\.\\*\\*.*"));
    }

    /** Of a class that could name people the verdict says what the evidence is consistent with; the rest says no more. */
    @ParameterizedTest
    @MethodSource("samples")
    void standing_and_verdict_of_one_paper_agree_on_whether_people_are_concluded(CaseFile file) {
        Dossier dossier = Cases.of(file);
        String paper = text(dossier, Kind.EXPLANATION);

        assertThat(paper.contains("concluded for the class of the cause; who it was is not"))
                .as(file.id().text())
                .isEqualTo(dossier.judgement().verdict().sentence().startsWith("The evidence is consistent with"));
        assertThat(paper.lines().filter(l -> l.contains("Chance: ")))
                .allSatisfy(l -> assertThat(l.startsWith("**The evidence is consistent with this"))
                        .isEqualTo(l.endsWith("Class: Driver habit.") || l.endsWith("Class: Towing or transport.")));
    }

    @ParameterizedTest
    @MethodSource("samples")
    void the_card_has_seven_points_at_most_and_puts_none_first_but_for_a_concluded_habit(CaseFile file) {
        Dossier dossier = Cases.of(file);
        boolean habit = dossier.judgement().verdict().classId().equals("driver-habit");

        String card = text(dossier, Kind.COACHING);
        String points = card.substring(card.indexOf("## "));

        assertThat(points.lines().filter(l -> l.startsWith("- "))).hasSizeBetween(1, 7);
        assertThat(card.contains("## First for this truck"))
                .as(file.id().text())
                .isEqualTo(habit && !dossier.judgement().advice().coaching().isEmpty());
        if (!habit) {
            assertThat(card)
                    .containsAnyOf(
                            "Nothing that was found points to the driver.",
                            "No conclusion is drawn about anybody's driving.");
        }
    }

    /** Figures side by side would rank people. */
    @Test
    void a_bench_sheet_of_an_undecided_case_gives_repair_notes_without_a_chance() {
        CaseSheet towedOrCoasted = new CaseSheet(new CaseId("scored-hubs"))
                .finding(new FindingEntry("hubs-scored-several-gears", FindingState.PRESENT))
                .finding(new FindingEntry("washers-cracked", FindingState.PRESENT))
                .finding(new FindingEntry("rear-section-sound", FindingState.PRESENT))
                .finding(new FindingEntry("oil-level-low", FindingState.ABSENT))
                .finding(new FindingEntry("front-countershaft-bearing-blue", FindingState.ABSENT))
                .finding(new FindingEntry("front-countershaft-rollers-spalled", FindingState.ABSENT))
                .finding(new FindingEntry("plug-in-oil-passage", FindingState.ABSENT))
                .finding(new FindingEntry("scoring-in-layers", FindingState.UNSURE));

        assertThat(text(Cases.of(towedOrCoasted.toCaseFile()), Kind.BENCH))
                .contains("It cannot be told yet.", "which cause it was is open: confirm before parts are ordered")
                .doesNotContain(" %");
    }

    @Test
    void a_broken_chain_stands_above_the_verdict() {
        Dossier whole = Cases.stored(burnedCones(Optional.empty()), Map.of());
        Dossier broken = Cases.changed(whole);

        for (Kind kind : List.of(Kind.EXPLANATION, Kind.EVIDENCE, Kind.BENCH)) {
            assertThat(text(broken, kind))
                    .containsSubsequence("THE CHAIN OF ENTRIES IS BROKEN at entry 2", "It cannot be told yet.");
            assertThat(text(whole, kind)).doesNotContain("IS BROKEN");
        }
    }

    /** Checks of a cause that the papers do not tell of are no business of the sheet; no figure says what is hoped for. */
    @ParameterizedTest
    @MethodSource("samples")
    void a_bench_sheet_asks_for_a_conclusion_or_for_a_cause_that_is_told_of(CaseFile file) {
        Dossier dossier = Cases.of(file);
        List<BenchPage.Check> checks = BenchPage.of(dossier).places().stream()
                .flatMap(p -> p.checks().stream())
                .toList();
        String explained = text(dossier, Kind.EXPLANATION);

        assertThat(checks).hasSizeLessThanOrEqualTo(7);
        checks.stream().map(BenchPage.Check::why).forEach(why -> {
            assertThat(why).doesNotContainPattern("\\d %");
            if (why.startsWith("tells of \"") && explained.contains("### ")) {
                assertThat(explained).contains("### " + why.substring(10, why.length() - 1) + "\n");
            }
        });
    }

    /** A habit that was concluded is no reason to talk to anybody once the case cannot be relied on. */
    @Test
    void the_coaching_card_of_a_broken_case_is_the_general_one_and_says_so() {
        Dossier whole = Cases.stored(Cases.sample("clash-in-every-gear-all-else-sound"), Map.of());

        assertThat(text(whole, Kind.COACHING)).contains("The first points go with what was found.");
        assertThat(text(Cases.changed(whole), Kind.COACHING))
                .contains("The chain of entries of the case is broken")
                .doesNotContain("The first points go with what was found.");
        assertThat(text(Cases.changed(whole), Kind.EXPLANATION)).doesNotContain("These points go with what was found.");
    }
}
