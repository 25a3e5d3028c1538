package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a part is and what that comes from are two questions, and a look at one part says nothing against its neighbour. */
class StateAndReasonTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

    private static OpenCase with(String entered) {
        return DIAGNOSIS.open(ShortCase.of("state", entered));
    }

    /** A mount, a bell housing, a flywheel out of its limit is just that; what it breaks in time is no reason of it. */
    @ParameterizedTest
    @CsvSource({
        "mount-movement-over, worn-mounts",
        "bell-housing-runout-over, housing-misaligned",
        "flywheel-runout-over, flywheel-misaligned"
    })
    void a_state_that_is_the_cause_is_certain_once_it_was_seen(String look, String cause) {
        try (OpenCase open = with(look)) {
            assertThat(open.probability(cause)).isGreaterThan(0.95);
        }
    }

    /** Marks of the main box in order say nothing of those behind (geared apart; common practice, no source). */
    @Test
    void main_box_marks_in_order_do_not_weigh_against_auxiliary_marks_out_of_order() {
        try (OpenCase alone = with("aux-timing-marks-off");
                OpenCase beside = with("aux-timing-marks-off, no timing-marks-off")) {
            assertThat(beside.probability("wrong-timing")).isEqualTo(alone.probability("wrong-timing"));
            assertThat(beside.judgement().verdict()).isEqualTo(alone.judgement().verdict());
        }
    }
}
