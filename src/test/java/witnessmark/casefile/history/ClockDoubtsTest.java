package witnessmark.casefile.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.gearbox.Layout;

/** A clock that was set back or is ahead is said, and what was entered under it stays. */
class ClockDoubtsTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    private static CaseHistory entered(String... times) {
        CaseHistory history = CaseHistory.open(
                new Opened(new CaseId("c"), "", "", Vehicle.unknown(), Layout.unknown()), new Stamp(START, "anna"));
        for (String time : times) {
            history = history.with(new NoteAdded("n"), new Stamp(Instant.parse(time), "anna"));
        }
        return history;
    }

    private static Clock at(String time) {
        return Clock.fixed(Instant.parse(time), ZoneOffset.UTC);
    }

    @Test
    void entries_in_order_and_small_differences_of_two_clocks_are_not_remarked() {
        assertThat(ClockDoubts.of(
                        entered("2026-03-02T09:00:00Z", "2026-03-02T08:55:00Z", "2026-03-02T10:05:00Z"),
                        at("2026-03-02T10:00:00Z")))
                .isEmpty();
    }

    @Test
    void an_entry_dated_before_one_it_follows_is_remarked() {
        assertThat(ClockDoubts.of(entered("2026-03-02T09:00:00Z", "2026-03-02T08:54:59Z"), at("2026-03-03T00:00:00Z")))
                .containsExactly(
                        "Entry 3 is dated 2026-03-02T08:54:59.000Z, before an entry it follows: a clock was set back.");
    }

    @Test
    void an_entry_dated_after_the_present_is_remarked() {
        assertThat(ClockDoubts.of(entered("2031-01-01T00:00:00Z"), at("2026-03-03T00:00:00Z")))
                .containsExactly(
                        "Entry 2 is dated 2031-01-01T00:00:00.000Z, after the present: a clock is or was ahead.");
    }
}
