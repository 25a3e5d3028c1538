package witnessmark.casefile.logged;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.Vehicle;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.summary.RecordedTimes.Odometer;
import witnessmark.triplog.summary.TimeSpan;

class LogDoubtsTest {
    private static final Instant OPENED = Instant.parse("2026-03-10T08:00:00Z");
    private static final Instant NOW = Instant.parse("2026-04-01T08:00:00Z");

    private static List<String> doubts(LogRecord record, String... names) {
        CaseFile file = new CaseSheet(new CaseId("c"))
                .vehicle(new Vehicle(
                        "Unit 31",
                        "",
                        "",
                        OptionalDouble.of(500_000),
                        OptionalDouble.of(300_000),
                        OptionalDouble.of(40_000),
                        ""))
                .toCaseFile();
        return LogDoubts.of(file, Optional.of(OPENED), record, List.of(names), NOW);
    }

    private static LogRecord record(double fitting, Optional<Odometer> odometer, TimeSpan... spans) {
        return new LogRecord(List.of(spans), odometer, 50, 1, 0.9, 0.8, 0.8 * fitting, 0, Map.of(), List.of());
    }

    private static TimeSpan day(String date) {
        long from = TimeSpan.micros(Instant.parse(date + "T06:00:00Z"));
        return new TimeSpan(from, from + 3_600_000_000L);
    }

    private static Optional<Odometer> odometer(double km) {
        return Optional.of(new Odometer(km, km + 50));
    }

    @Test
    void a_log_of_the_weeks_before_with_fitting_ratios_and_odometer_raises_no_doubt() {
        assertThat(doubts(record(0.97, odometer(498_000), day("2026-03-02")), "unit-031", "trip", ""))
                .isEmpty();
    }

    @Test
    void ratios_that_do_not_fit_raise_a_doubt_but_not_where_there_was_no_driving_to_judge_by() {
        assertThat(doubts(record(0.5, Optional.empty())))
                .singleElement()
                .asString()
                .startsWith("the ratios of this truck fit in only 50 % of the driving time");
        LogRecord tow = new LogRecord(List.of(), Optional.empty(), 5, 0.2, 0.2, 0, 0, 0, Map.of(), List.of());
        assertThat(doubts(tow)).isEmpty();
    }

    @Test
    void dates_after_the_case_was_opened_or_still_to_come_raise_a_doubt_and_a_clock_never_set_does_not() {
        assertThat(doubts(record(1, Optional.empty(), day("2026-03-10")))).isEmpty();
        assertThat(doubts(record(1, Optional.empty(), day("2026-03-20"))))
                .containsExactly(
                        "it was recorded until 2026-03-20, the case was opened on 2026-03-10: it is of the time"
                                + " after the damage, or of another truck");
        assertThat(doubts(record(1, Optional.empty(), day("2026-05-20"))))
                .containsExactly("its clock says 2026-05-20, which is still to come");
        assertThat(doubts(record(1, Optional.empty(), day("1970-01-01")))).isEmpty();
    }

    @Test
    void an_odometer_that_cannot_be_is_told_and_a_trip_counter_is_none() {
        assertThat(doubts(record(1, odometer(505_000)))).isEmpty();
        assertThat(doubts(record(1, odometer(520_000))))
                .containsExactly("its odometer reads 520050 km, that of the case 500000 km");
        assertThat(doubts(record(1, odometer(420_000))))
                .containsExactly("its odometer begins at 420000 km, before its last repair (at about 460000 km)");
        assertThat(doubts(record(1, odometer(90_000)))).hasSize(2);
        assertThat(doubts(record(1, odometer(0)))).isEmpty();
    }

    @Test
    void an_odometer_that_shrinks_from_one_log_of_the_case_to_a_later_one_is_told() {
        LogRecord held = record(1, odometer(480_000), day("2026-02-01"));
        CaseFile file = new CaseSheet(new CaseId("c"))
                .evidence(LoggedEvidence.of(
                        "log-a",
                        Map.of(),
                        List.of(new Evidence.SourceFile("a.csv", "0".repeat(64))),
                        held,
                        List.of(),
                        new WeighOnce()))
                .toCaseFile();

        assertThat(LogDoubts.of(
                        file, Optional.of(OPENED), record(1, odometer(210_000), day("2026-02-03")), List.of(), NOW))
                .containsExactly("its odometer and dates go against those of evidence log-a: later, yet fewer km");
        assertThat(LogDoubts.of(
                        file, Optional.of(OPENED), record(1, odometer(480_300), day("2026-02-03")), List.of(), NOW))
                .isEmpty();
    }

    @Test
    void a_name_of_the_same_form_with_another_number_is_told_and_names_of_other_forms_say_nothing() {
        assertThat(doubts(record(1, Optional.empty()), "unit-32", "UNIT 32"))
                .containsExactly(
                        "its name says unit-32, the truck of the case is Unit 31",
                        "its name says UNIT 32, the truck of the case is Unit 31");
        assertThat(doubts(record(1, Optional.empty()), "2026-03-02", "truck-32", "unit", "31"))
                .isEmpty();
    }
}
