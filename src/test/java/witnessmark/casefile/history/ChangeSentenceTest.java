package witnessmark.casefile.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseArbitraries;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.Teller;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;

/** What a reader of a case's history is told of each kind of entry. */
class ChangeSentenceTest {
    private static final FindingEntry SOUND = new FindingEntry("lever-hops", FindingState.ABSENT);
    private static final FindingEntry HOPS = new FindingEntry(
            "lever-hops", FindingState.PRESENT, "on overrun", Optional.of(Teller.DRIVER), Optional.of("5"));

    private static String of(Change change) {
        return ChangeSentence.of(change);
    }

    @Test
    void a_finding_is_told_with_all_that_was_said_of_it_and_what_stood_before() {
        assertThat(of(new FindingSet(SOUND))).isEqualTo("finding lever-hops: absent");
        assertThat(of(new FindingSet(Optional.of(SOUND), HOPS)))
                .isEqualTo("finding lever-hops: present, gear 5, told by the driver (was absent) - on overrun");
        assertThat(of(new FindingCleared("lever-hops"))).isEqualTo("finding lever-hops taken off");
        assertThat(of(new FindingCleared("lever-hops", Optional.of(SOUND))))
                .isEqualTo("finding lever-hops taken off (was absent)");
    }

    @Test
    void a_measurement_is_told_with_its_unit_and_what_stood_before() {
        Measurement low = new Measurement("range-regulator-pressure", 44, Unit.PSI);
        Measurement good = new Measurement("range-regulator-pressure", 60.5, Unit.PSI);
        assertThat(of(new MeasurementSet(low))).isEqualTo("measured range-regulator-pressure: value 44, unit psi");
        assertThat(of(new MeasurementSet(Optional.of(low), good)))
                .isEqualTo("measured range-regulator-pressure: value 60.5, unit psi (was value 44, unit psi)");
        assertThat(of(new MeasurementCleared("oil-level"))).isEqualTo("measurement oil-level taken off");
    }

    @Test
    void texts_notes_files_and_the_opening_are_told_in_their_own_words() {
        CaseId id = new CaseId("one");
        assertThat(of(new Opened(id, "Slips", "slips on hills", Vehicle.unknown(), Layout.unknown())))
                .isEqualTo("case opened: Slips - slips on hills");
        assertThat(of(new Opened(id, "Slips", "", Vehicle.unknown(), Layout.unknown())))
                .isEqualTo("case opened: Slips");
        assertThat(of(new NoteAdded("oil renewed"))).isEqualTo("note: oil renewed");
        assertThat(of(new TextSet(TextField.WORK_DONE, "cones replaced"))).isEqualTo("work done: cones replaced");
        assertThat(of(new TextSet(TextField.INTERVIEW_POSITION, "x")))
                .doesNotContain("x;")
                .contains("interview");
        Attachment cone = new Attachment("cone.jpg", "image/jpeg", "a".repeat(64), 12);
        assertThat(of(new AttachmentAdded(cone))).isEqualTo("attached cone.jpg, SHA-256 " + "a".repeat(64));
        assertThat(of(new AttachmentRemoved(cone))).isEqualTo("attachment cone.jpg taken off");
        assertThat(of(new VehicleSet(Vehicle.named("Tractor 7")))).isEqualTo("truck: unit Tractor 7");
        assertThat(of(new GearboxSet(Layout.unknown()))).startsWith("gearbox:");
        assertThat(of(new SignedOff())).isEqualTo("signed off");
    }

    @Test
    void a_correction_says_why_before_what() {
        assertThat(of(new CorrectedAfterSignOff("wrong lever", new FindingSet(SOUND))))
                .isEqualTo("CORRECTION after sign-off, because wrong lever: finding lever-hops: absent");
    }

    @Test
    void of_a_claim_only_what_differs_is_told() {
        Claim before = Claim.none().with(Map.of(ClaimField.WORK_ORDER, "17", ClaimField.CUSTOMER, "Sand"));
        Claim after = Claim.none().with(Map.of(ClaimField.WORK_ORDER, "18"));
        String told = of(new ClaimSet(before, after));
        assertThat(told)
                .startsWith("claim: ")
                .contains("18")
                .contains("taken off")
                .doesNotContain("Sand");
        Claim more = before.with(Map.of(ClaimField.SHOP, "North Yard"));
        assertThat(of(new ClaimSet(before, more))).contains("North Yard").doesNotContain("17");
    }

    @Test
    void evidence_is_told_by_its_kind_and_summary() {
        Evidence energy = new Evidence(
                "cone-energy", Evidence.Kind.COMPUTED, "4 kJ a shift", "", Map.of(), Optional.empty(), Map.of());
        assertThat(of(new EvidenceSet(energy))).isEqualTo("computed evidence cone-energy: 4 kJ a shift");
        assertThat(of(new EvidenceRemoved("cone-energy"))).isEqualTo("evidence cone-energy taken off");
    }

    @Test
    void a_form_is_told_as_names_and_values_and_what_lies_inside_in_brackets() {
        assertThat(ChangeSentence.words(Map.of("ratios", List.of(13.0, "18")))).isEqualTo("ratios 13; 18");
        assertThat(ChangeSentence.words(Map.of("limit", Map.of("low", 57.25)))).isEqualTo("limit (low 57.25)");
    }

    @Property(tries = 200)
    void every_change_has_a_sentence_that_is_not_empty_and_a_correction_holds_it(@ForAll("change") Change change) {
        String told = of(change);
        assertThat(told).isNotBlank();
        assertThat(of(new CorrectedAfterSignOff("why", change))).endsWith(told).contains("why");
    }

    @Provide
    Arbitrary<Change> change() {
        return Arbitraries.lazy(CaseArbitraries::changes);
    }
}
