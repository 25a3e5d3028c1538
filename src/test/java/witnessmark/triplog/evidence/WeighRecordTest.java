package witnessmark.triplog.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.DriveScripts;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.ReadTrip;
import witnessmark.triplog.SimulatedDrive;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.TripRequest;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;

class WeighRecordTest {
    private static final String STARTS = "log-standing-start-high-range";

    private final GearTable table = InventedTrucks.thirteen();

    @TempDir
    private Path folder;

    private LogRecord record(SimulatedDrive drive, double hertz) {
        Path file = folder.resolve("drive.csv");
        drive.writeCsv(file, Recording.usual(hertz), 3);
        TripResult trip = ReadTrip.read(TripRequest.of(file, table), Progress.SILENT);
        return trip.record();
    }

    private static Map<String, LogEvidence> weigh(LogRecord record) {
        return WeighRecord.weigh(record).stream().collect(Collectors.toMap(LogEvidence::finding, Function.identity()));
    }

    private Map<String, LogEvidence> weigh(SimulatedDrive drive, double hertz) {
        return weigh(record(drive, hertz));
    }

    /** Half an hour and more of a truck whose ratios fit, with so many starts in high range. */
    private static LogRecord starts(long count, double chances, double hours) {
        return new LogRecord(
                List.of(),
                Optional.empty(),
                40 * hours,
                hours,
                0.9 * hours,
                0.8 * hours,
                0.75 * hours,
                0,
                Map.of(STARTS, new LogRecord.Tally(count, 0.95 * count, chances)),
                List.of());
    }

    @Test
    void events_make_a_finding_present() {
        LogEvidence evidence = weigh(DriveScripts.habits(table, 31), 10).get(STARTS);

        assertThat(evidence.state()).isEqualTo(LogEvidence.State.PRESENT);
        assertThat(evidence.factor()).isGreaterThan(3).isLessThanOrEqualTo(100);
        assertThat(evidence.sentence()).contains("start from rest in high range in");
    }

    @Test
    void two_records_weigh_as_the_sum_of_their_counts_and_not_as_the_product_of_their_weights() {
        LogRecord one = starts(1, 60, 1);
        LogRecord other = starts(0, 40, 2);

        double together = weigh(one.plus(other)).get(STARTS).factor();

        assertThat(together).isCloseTo(weigh(starts(1, 100, 3)).get(STARTS).factor(), within(1e-12));
        double product =
                weigh(one).get(STARTS).factor() * weigh(other).get(STARTS).factor();
        assertThat(together).isNotCloseTo(product, within(0.1));
    }

    @Nested
    class OpenActs {
        private final LogRecord habit = tally(new LogRecord.Tally(2, 1.9, 13));
        private final LogRecord open = tally(new LogRecord.Tally(0, 0, 15, 3));

        private LogRecord tally(LogRecord.Tally tally) {
            LogRecord log = starts(0, 0, 1);
            return new LogRecord(
                    log.spans(),
                    log.odometer(),
                    log.km(),
                    log.coveredHours(),
                    log.movingHours(),
                    log.tellingHours(),
                    log.fittingHours(),
                    log.coastKm(),
                    Map.of(STARTS, tally),
                    log.doubts());
        }

        @Test
        void what_something_else_explains_is_held_neither_for_nor_against() {
            assertThat(weigh(open)).doesNotContainKey(STARTS);
            assertThat(weigh(open.plus(open))).doesNotContainKey(STARTS);
        }

        /** Closed form of two acts of 0.95 in 28 chances, of a mean rate of 0.95 x 0.08 and of 0.002 each. */
        @Test
        void its_chances_count_once_another_log_shows_the_thing_whichever_was_added_first() {
            double with = 0.95 * 0.08 * 28;
            double without = 0.002 * 28;
            double factor = (1 + without) / (1 + with) * Math.pow(with / (1 + with) / (without / (1 + without)), 1.9);

            LogEvidence forth = weigh(habit.plus(open)).get(STARTS);

            assertThat(forth.chances()).isEqualTo(28);
            assertThat(forth.factor()).isCloseTo(factor, within(1e-9 * factor));
            assertThat(weigh(open.plus(habit))).isEqualTo(weigh(habit.plus(open)));
        }
    }

    /** A truck's one rate, spread exponentially about its mean, by numerical integration of Poisson chances. */
    @Test
    void the_pooled_weight_is_that_of_both_records_under_one_common_rate() {
        double with = integral(0.95 * 0.08, 2, 30, 1, 50);
        double without = integral(0.002, 2, 30, 1, 50);

        double factor =
                weigh(starts(2, 30, 2).plus(starts(1, 50, 2))).get(STARTS).factor();

        assertThat(Math.min(100, with / without)).isCloseTo(factor, within(1e-3 * factor));
    }

    private static double integral(double mean, double x1, double e1, double x2, double e2) {
        double w1 = 0.95 * x1;
        double w2 = 0.95 * x2;
        double sum = 0;
        double step = mean / 20_000;
        for (double rate = step / 2; rate < 40 * mean; rate += step) {
            sum += Math.exp(-rate / mean - rate * (e1 + e2)) * Math.pow(rate, w1 + w2) / mean * step;
        }
        return sum;
    }

    @Test
    void adding_the_same_habit_again_never_weighs_more_than_the_most_one_witness_can() {
        LogRecord sum = starts(3, 6, 1);
        for (int i = 0; i < 20; i++) {
            sum = sum.plus(starts(3, 6, 1));
        }

        assertThat(weigh(sum).get(STARTS).factor()).isCloseTo(100, within(1e-9));
    }

    @Nested
    class TooThin {
        @Test
        void a_single_event_weighs_but_is_no_habit() {
            LogEvidence once = weigh(starts(1, 6, 2)).get(STARTS);

            assertThat(once.speaksFor()).isTrue();
            assertThat(once.state()).isEqualTo(LogEvidence.State.UNSURE);
            assertThat(once.thin().map(Thin::words)).contains("seen once; a habit shows again");
        }

        @Test
        void a_few_minutes_are_no_record_of_a_habit_however_often_it_shows_in_them() {
            assertThat(weigh(starts(3, 6, 0.1)).get(STARTS).thin().map(Thin::words))
                    .contains("the logs cover 6 min; add logs of more trips");
            assertThat(weigh(starts(3, 6, 0.1).plus(starts(0, 6, 0.6)))
                            .get(STARTS)
                            .state())
                    .isEqualTo(LogEvidence.State.PRESENT);
        }

        @Test
        void logs_whose_ratios_hardly_fit_carry_nothing_that_needs_the_gear() {
            LogRecord fits = starts(3, 20, 2);
            LogRecord misfit =
                    new LogRecord(List.of(), Optional.empty(), 80, 2, 1.8, 1.6, 0.9, 0, fits.tallies(), List.of());

            assertThat(weigh(fits).get(STARTS).state()).isEqualTo(LogEvidence.State.PRESENT);
            assertThat(weigh(misfit).get(STARTS).thin().map(Thin::words))
                    .contains("a ratio fits in only 56 % of the driving time");
        }

        @Test
        void a_log_in_doubt_takes_the_conclusion_from_all_that_it_is_pooled_with() {
            LogRecord doubted = starts(3, 6, 2).with(List.of("its odometer reads 9000 km"));

            LogEvidence evidence = weigh(doubted.plus(starts(3, 6, 2))).get(STARTS);

            assertThat(evidence.state()).isEqualTo(LogEvidence.State.UNSURE);
            assertThat(evidence.thin().map(Thin::words)).contains("a log among them may be of another truck or time");
        }
    }

    @Test
    void many_proper_starts_speak_against_the_habit_and_few_say_little() {
        LogEvidence many = weigh(DriveScripts.proper(table, 4, 40), 10).get("log-standing-start-high-range");
        LogEvidence few = weigh(DriveScripts.proper(table, 4, 2), 10).get("log-standing-start-high-range");

        assertThat(many.state()).isEqualTo(LogEvidence.State.ABSENT);
        assertThat(few.state()).isEqualTo(LogEvidence.State.UNSURE);
        assertThat(many.factor()).isLessThan(few.factor());
    }

    @Test
    void no_event_in_the_chances_weighs_as_the_closed_form_says() {
        LogEvidence evidence = weigh(DriveScripts.proper(table, 4, 8), 10).get("log-standing-start-high-range");

        // 8 starts: (1 / (1 + 0.95 x 0.08 x 8)) / (1 / (1 + 0.002 x 8))
        assertThat(evidence.factor()).isEqualTo(1.016 / 1.608, within(1e-9));
    }

    @Test
    void what_a_log_cannot_show_makes_no_evidence() {
        Map<String, LogEvidence> evidence = weigh(DriveScripts.habits(table, 31), 0.2);

        assertThat(evidence)
                .doesNotContainKeys(
                        "log-standing-start-high-range",
                        "log-range-low-above-ceiling",
                        "log-overdrive-to-low-pair",
                        "log-range-moved-in-neutral");
        assertThat(evidence.get("log-oil-temperature-high").state()).isEqualTo(LogEvidence.State.PRESENT);
    }

    @Test
    void overspeed_in_one_ratio_is_told_from_overspeed_after_a_downshift() {
        SimulatedDrive runaway = new SimulatedDrive(table, 5);
        runaway.stand(5)
                .start("2")
                .driveTo(15, 0.5)
                .shift("4", SimulatedDrive.Style.DOUBLE)
                .drive(5, 0, 20);
        runaway.runAway(1.25).drive(10, 0, 20).stop();

        Map<String, LogEvidence> evidence = weigh(runaway, 10);

        assertThat(evidence.get("log-overspeed-one-ratio").count()).isEqualTo(1);
        assertThat(evidence).doesNotContainKey("log-overspeed-after-downshift");
    }
}
