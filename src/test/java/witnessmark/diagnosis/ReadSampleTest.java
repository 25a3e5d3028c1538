package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.EarlierSample;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.diagnosis.fact.Yields.Side;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;

/**
 * An oil analysis without the manual's limit. The figures that are held against are those of the published lists named in
 * {@code measures.yaml} (gear oil fit for further use: iron under 300, silicon under 60 mg/kg, water under 400 ppm, viscosity
 * within 10 per cent; truck transmission fluid: water to 0.2 per cent, viscosity within 25 per cent, acid number 3 over fresh);
 * that twice the earlier sample is a rise is common practice, no source.
 */
class ReadSampleTest {
    private static final KnowledgeBase KNOWLEDGE = ShippedKnowledge.load();
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), KNOWLEDGE);

    private static Measurement read(String measure, double value, Unit unit, Double... earlier) {
        List<EarlierSample> before = new ArrayList<>();
        for (Double one : earlier) {
            if (one != null) {
                before.add(new EarlierSample(
                        one, LocalDate.of(2026, 3, 14).minusMonths(before.size()), OptionalDouble.of(812_000)));
            }
        }
        return new Measurement(measure, value, unit, Optional.empty(), before, "");
    }

    private static Map<Side, FindingState> sides(Measurement read) {
        return ReadSample.of(KNOWLEDGE.measures().get(read.measure()), read)
                .orElseThrow()
                .sides();
    }

    private static CaseFile caseWith(Measurement read) {
        return new CaseSheet(new CaseId("sample")).measurement(read).toCaseFile();
    }

    @ParameterizedTest
    @CsvSource({
        // the published bound itself is not beyond it
        "oil-iron, 90, , absent",
        "oil-iron, 250, , unsure",
        "oil-iron, 300, , unsure",
        "oil-iron, 301, , present",
        "oil-silicon, 61, , present",
        "oil-water, 0.04, , absent",
        "oil-water, 0.1, , unsure",
        "oil-water, 0.21, , present",
        // risen, though others have as much; and less than double, though it is more than others have
        "oil-iron, 180, 60, present",
        "oil-iron, 90, 30, present",
        "oil-iron, 250, 240, absent",
        "oil-iron, 320, 310, unsure",
        // tripled, yet by so little that it may be chance
        "oil-iron, 12, 4, absent",
        "oil-iron, 60, 0, present",
        "oil-acid-number, 3.4, 0.4, present",
        "oil-acid-number, 3.4, 2.9, absent",
        "oil-acid-number, 3.4, , unsure",
    })
    void a_high_value_is_told_by_its_own_samples_then_by_what_is_usual(
            String measure, double value, Double earlier, String state) {
        Unit unit = KNOWLEDGE.measures().get(measure).unit();

        assertThat(sides(read(measure, value, unit, earlier)))
                .containsEntry(Side.ABOVE, FindingState.parse(state).orElseThrow());
    }

    @ParameterizedTest
    @CsvSource({
        "74, present, absent",
        "80, unsure, absent",
        "100, absent, absent",
        "118, absent, unsure",
        "126, absent, present"
    })
    void a_viscosity_can_be_off_on_either_side(double value, String low, String high) {
        assertThat(sides(read("oil-viscosity-against-fresh", value, Unit.PERCENT)))
                .containsEntry(Side.BELOW, FindingState.parse(low).orElseThrow())
                .containsEntry(Side.ABOVE, FindingState.parse(high).orElseThrow());
    }

    @Test
    void the_highest_of_several_samples_counts_and_any_unit_does() {
        assertThat(sides(read("oil-iron", 180, Unit.MILLIGRAM_PER_KILOGRAM, 20.0, 95.0)))
                .containsEntry(Side.ABOVE, FindingState.ABSENT);
        assertThat(sides(read("oil-water", 2_500, Unit.PARTS_PER_MILLION)))
                .containsEntry(Side.ABOVE, FindingState.PRESENT);
    }

    @Test
    void the_answer_says_the_figures_and_where_they_are_from_in_both_languages() {
        CaseFile file = caseWith(read("oil-iron", 180, Unit.MILLIGRAM_PER_KILOGRAM, 60.0));

        assertThat(DIAGNOSIS.judge(file).remarks()).singleElement().satisfies(said -> assertThat(said)
                .contains("read 180 mg/kg", "3 times its own earlier sample of 2026-03-14 (60 mg/kg at 812000 km)")
                .contains("good up to 100 mg/kg, bad above 300 mg/kg", "published", "common practice, no source")
                .endsWith("counts as too high."));
        assertThat(DIAGNOSIS.in(Language.SPANISH).judge(file).remarks())
                .singleElement()
                .satisfies(said -> assertThat(said)
                        .contains("3 veces su propia muestra anterior del 2026-03-14", "práctica común, sin fuente"));
    }

    @Test
    void it_weighs_as_the_finding_does_and_a_limit_or_a_report_goes_before_it() {
        Measurement iron = read("oil-iron", 320, Unit.MILLIGRAM_PER_KILOGRAM);
        Measurement good = new Measurement(
                "oil-iron",
                320,
                Unit.MILLIGRAM_PER_KILOGRAM,
                Optional.of(new Limits(
                        OptionalDouble.empty(), OptionalDouble.of(400), Unit.MILLIGRAM_PER_KILOGRAM, "this manual")),
                List.of(new EarlierSample(10, LocalDate.of(2026, 3, 14), OptionalDouble.empty())),
                "");
        CaseFile reported = new CaseSheet(new CaseId("sample"))
                .measurement(iron)
                .finding(new FindingEntry("oil-iron-high", FindingState.ABSENT))
                .toCaseFile();

        try (OpenCase high = DIAGNOSIS.open(caseWith(iron));
                OpenCase within = DIAGNOSIS.open(caseWith(good));
                OpenCase told = DIAGNOSIS.open(reported)) {
            assertThat(high.taken().get("oil-iron-high")).isEqualTo(FindingState.PRESENT);
            assertThat(within.taken().get("oil-iron-high")).isEqualTo(FindingState.ABSENT);
            assertThat(told.taken().get("oil-iron-high")).isEqualTo(FindingState.ABSENT);
            assertThat(told.judgement().contradictions()).isEmpty();
            assertThat(told.judgement().remarks())
                    .anySatisfy(said -> assertThat(said).endsWith("What was reported goes before that."));
        }
    }

    @Test
    void what_nothing_is_known_of_stays_without_a_finding() {
        Measurement sodium = read("oil-sodium", 400, Unit.MILLIGRAM_PER_KILOGRAM);

        assertThat(ReadSample.of(KNOWLEDGE.measures().get("oil-sodium"), sodium))
                .isEmpty();
        assertThat(DIAGNOSIS.judge(caseWith(sodium)).remarks()).singleElement().satisfies(said -> assertThat(said)
                .contains("no limit was given, so nothing follows"));
    }
}
