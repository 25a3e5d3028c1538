package witnessmark.interview;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.Stamp;
import witnessmark.casefile.history.TextSet;
import witnessmark.gearbox.Layout;

class PositionTest {
    private static final Stamp STAMP = new Stamp(Instant.EPOCH, "technician");

    @Test
    void a_place_is_read_back_as_it_was_kept() {
        Position place = new Position(Stage.CHECKS, java.util.Set.of("teardown", "under"), List.of(4L, 9L, 12L));

        assertThat(Position.of(opened(), Optional.of(place.text()))).isEqualTo(place);
    }

    @Test
    void entries_between_going_to_the_checks_and_leaving_them_are_answers() {
        Position place = Position.of(opened(), Optional.empty())
                .at(Stage.CHECKS, 3)
                .at(Stage.ACCOUNT, 6)
                .at(Stage.CHECKS, 8);

        assertThat(List.of(3L, 4L, 6L, 7L, 8L, 9L))
                .filteredOn(place::isAmongChecks)
                .containsExactly(4L, 6L, 9L);
    }

    @Test
    void a_case_of_an_older_program_goes_on_where_its_entries_say() {
        CaseHistory old = opened().with(
                        List.of(
                                set("hard-shift-up"),
                                moved("checks"),
                                set("pilot-bearing-rough"),
                                moved("checks; skipped teardown,under"),
                                set("clutch-dragging")),
                        STAMP);

        Position place = Position.of(old, Optional.empty());

        assertThat(place.stage()).isEqualTo(Stage.CHECKS);
        assertThat(place.skipped()).containsExactlyInAnyOrder("teardown", "under");
        assertThat(Answered.in(old, place))
                .extracting(Answered.Answer::id)
                .containsExactly("pilot-bearing-rough", "clutch-dragging");
    }

    @Test
    void a_text_that_is_no_place_leads_to_where_the_case_would_go_on_without_one() {
        assertThat(Position.of(opened(), Optional.of("; skipped ; turns x,-3,99999999999999999999")))
                .isEqualTo(new Position(Stage.TRUCK, java.util.Set.of(), List.of()));
        assertThat(Position.of(opened().with(set("hard-shift-up"), STAMP), Optional.of(""))
                        .stage())
                .isEqualTo(Stage.CHECKS);
    }

    private static Change set(String finding) {
        return new FindingSet(new FindingEntry(finding, FindingState.PRESENT));
    }

    private static Change moved(String to) {
        return new TextSet(TextField.INTERVIEW_POSITION, to);
    }

    private static CaseHistory opened() {
        return CaseHistory.open(new Opened(new CaseId("old"), "", "", Vehicle.unknown(), Layout.unknown()), STAMP);
    }
}
