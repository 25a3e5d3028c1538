package witnessmark.casefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.gearbox.evidence.ComputedFinding.Kind;
import witnessmark.gearbox.evidence.ComputedFinding.State;

class ComputedEvidenceTest {

    private static ComputedFinding finding(Kind kind, State state) {
        return new ComputedFinding(
                kind,
                state,
                Map.of(
                        "ratio of gear Rl",
                        Figure.given(14.4, Unit.RATIO),
                        "tyre",
                        Figure.assumed(312, Unit.REVOLUTION_PER_KILOMETRE, "x".repeat(300))),
                "v = 60 n / N",
                Figure.given(60, Unit.KILOMETRE_PER_HOUR),
                Figure.assumed(30, Unit.KILOMETRE_PER_HOUR, "judgement"),
                "the shift was above");
    }

    @Test
    void inputs_formula_and_bound_are_kept_with_what_was_assumed() {
        Evidence evidence = ComputedEvidence.of(
                "a-shift", "unit-seven", List.of(finding(Kind.LOW_RANGE_ABOVE_CEILING, State.PRESENT)), false);

        assertThat(evidence.kind()).isEqualTo(Evidence.Kind.COMPUTED);
        assertThat(evidence.inputs())
                .containsEntry("truck", "unit-seven")
                .containsEntry("ratio-of-gear-rl", "14.4")
                .containsKey("tyre");
        assertThat(evidence.inputs().get("tyre"))
                .startsWith("312 rev/km (502.1 rev/mi), assumed: xxx")
                .hasSizeLessThanOrEqualTo(CheckedText.LONGEST_LINE);
        assertThat(evidence.formula())
                .isEqualTo("computed-low-range-above-ceiling: v = 60 n / N; result 60 km/h (37.28 mph), held against"
                        + " 30 km/h (18.64 mph), assumed: judgement");
        assertThat(evidence.summary()).isEqualTo("The shift was above.");
        assertThat(evidence.findings())
                .containsExactlyEntriesOf(Map.of("computed-low-range-above-ceiling", FindingState.PRESENT));
    }

    @Test
    void what_is_not_counted_is_told_but_nothing_follows_from_it() {
        Evidence evidence =
                ComputedEvidence.of("a-tow", "", List.of(finding(Kind.TOW_RUB_LONG, State.NOT_COUNTED)), false);

        assertThat(evidence.summary()).isNotEmpty();
        assertThat(evidence.findings()).isEmpty();
        assertThat(evidence.inputs()).doesNotContainKey("truck");
    }

    @Test
    void a_guess_makes_unsure_of_present_and_of_absent() {
        Evidence evidence = ComputedEvidence.of(
                "a-guess",
                "t",
                List.of(finding(Kind.DISC_OVERSPEED, State.PRESENT), finding(Kind.CONE_ENERGY_HIGH, State.ABSENT)),
                true);

        assertThat(evidence.findings().values()).containsOnly(FindingState.UNSURE);
        assertThat(evidence.summary()).startsWith("From figures that are a guess: ");
    }

    @Test
    void nothing_found_is_no_evidence() {
        assertThatThrownBy(() -> ComputedEvidence.of("an-upshift", "t", List.of(), false))
                .isInstanceOf(CaseRefused.class)
                .hasMessageContaining("nothing was found that a case could hold");
    }

    @Test
    void one_shift_made_well_does_not_undo_another_made_badly() {
        CaseSheet sheet = new CaseSheet(new CaseId("two-shifts"));
        sheet.evidence(evidence("first", FindingState.PRESENT));
        sheet.evidence(evidence("second", FindingState.ABSENT));
        sheet.evidence(evidence("third", FindingState.UNSURE));

        assertThat(CombinedEvidence.of(sheet.toCaseFile()).findings())
                .containsExactlyEntriesOf(Map.of("computed-cone-energy-high", FindingState.PRESENT));
    }

    private static Evidence evidence(String id, FindingState state) {
        return new Evidence(
                id,
                Evidence.Kind.COMPUTED,
                "",
                "",
                Map.of(),
                Optional.empty(),
                Map.of("computed-cone-energy-high", state));
    }
}
