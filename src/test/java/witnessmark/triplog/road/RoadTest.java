package witnessmark.triplog.road;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.ReadTrip;
import witnessmark.triplog.TripRequest;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.evidence.DoubtRatios;
import witnessmark.triplog.evidence.LogEvidence;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.WeighRecord;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.signal.Signal;

/** Against the truth of drives by physics: seeds that were never looked at while the program was made. */
class RoadTest {
    private static final int FIRST = 2001;

    @TempDir
    private Path folder;

    @Test
    void what_the_logs_can_show_is_found_and_what_is_found_is_true_however_the_columns_are_mapped() {
        RoadScore hand = new RoadScore(false);
        RoadScore guess = new RoadScore(false);
        for (int seed = FIRST; seed < FIRST + 24; seed += 2) {
            RoadDriver drive = RoadTrip.habits(seed);
            RoadLog log = RoadReport.log(drive, seed);
            Path file = folder.resolve("road.log");
            log.write(file);
            hand.add(drive, log, RoadReport.read(file, drive, log.byHand()).events(), "");
            guess.add(drive, log, RoadReport.read(file, drive, Optional.empty()).events(), "");
        }

        assertThat(hand.recall()).as(hand.table()).isGreaterThanOrEqualTo(0.95);
        assertThat(hand.precision()).as(hand.table()).isGreaterThanOrEqualTo(0.97);
        assertThat(guess.recall()).as(guess.table()).isGreaterThanOrEqualTo(hand.recall() - 0.03);
        assertThat(hand.visible(EventKind.LOW_RANGE_ABOVE_CEILING)).isPositive();
    }

    @Test
    void clean_drives_show_nothing_false_at_any_rate() {
        for (int i = 0; i < RoadLog.RATES.length; i++) {
            RoadDriver drive = RoadTrip.clean(FIRST + 2 * i);
            RoadLog log = new RoadLog(drive, FIRST + i, RoadLog.RATES[i], RoadLog.Style.values()[i], true);
            RoadScore score = new RoadScore(false);
            score.add(drive, log, events(drive, log), "");

            assertThat(score.falseEvents).as(score.table()).isZero();
        }
    }

    /** The range moves below the ceiling of low range; the truck then slows down and takes a shorter gear, below its own. */
    @Test
    void a_shorter_gear_taken_after_a_long_roll_does_not_make_a_proper_range_shift_too_fast() {
        for (double hertz : new double[] {2, 5, 10}) {
            RoadDriver drive = RoadTrip.plain(FIRST + 1);
            drive.stand(8);
            for (int i = 0; i < 3; i++) {
                RoadNearMisses.shorterGearAfterLongNeutral(drive);
            }
            RoadLog log = new RoadLog(drive, FIRST, hertz, RoadLog.Style.SNAKE, false);
            log.giveAll();

            assertThat(events(drive, log)).noneMatch(e -> e.kind() == EventKind.LOW_RANGE_ABOVE_CEILING);
        }
    }

    /** At 0 while the truck drives off, and at 26 km/h while it stops, backs and drives off again. */
    @Test
    void a_road_speed_that_stands_still_makes_no_start_and_no_reverse_of_what_was_none() {
        int seed = 90_023;
        for (RoadDriver drive : List.of(RoadTrip.habits(seed), RoadTrip.clean(seed + 50_000))) {
            RoadLog log = RoadReport.log(drive, seed);
            RoadScore score = new RoadScore(false);
            score.add(drive, log, events(drive, log), "");

            assertThat(log.frozen.orElseThrow().signal()).isEqualTo(Signal.ROAD_SPEED);
            assertThat(score.falseEvents).as(score.table()).isZero();
        }
    }

    @Test
    void no_signal_left_out_makes_innocent_driving_evidence_for_a_habit() {
        RoadDriver drive = RoadTrip.clean(FIRST + 101);
        for (double hertz : new double[] {1, 5, 20}) {
            blamesNobody(drive, FIRST, hertz);
        }
    }

    @Test
    @Tag("long")
    void no_signal_left_out_at_any_rate_makes_any_innocent_drive_evidence_for_a_habit() {
        for (int seed = FIRST + 201; seed < FIRST + 209; seed++) {
            RoadDriver drive = RoadTrip.clean(seed);
            for (double hertz : RoadLog.RATES) {
                blamesNobody(drive, seed, hertz);
            }
        }
    }

    /** Each signal is left out in turn; switches at the lever take the lever's place where that is left out. */
    private void blamesNobody(RoadDriver drive, int seed, double hertz) {
        for (Signal signal : Signal.values()) {
            RoadLog log = new RoadLog(drive, seed, hertz, RoadLog.Style.SNAKE, true);
            log.giveAll();
            if (signal == Signal.ENGINE_SPEED || signal == Signal.ROAD_SPEED || !log.given.contains(signal)) {
                continue;
            }
            log.leaveOut(signal);
            Path file = folder.resolve("left-out.log");
            log.write(file);
            var trip = RoadReport.read(file, drive, log.byHand());
            LogRecord record = trip.record();

            // The clean driver does float gears: a shift without the clutch is there, matched or not.
            assertThat(WeighRecord.weigh(record).stream()
                            .filter(e -> e.speaksFor() && e.count() > 0)
                            // What a log shows too thinly stays unsure and carries nothing.
                            .filter(e -> e.state() == LogEvidence.State.PRESENT)
                            .filter(e -> !e.finding().equals("log-shift-gaps-very-short")))
                    .as("seed %d without %s at %s rows a second, %s", seed, signal, hertz, log.frozen)
                    .isEmpty();
        }
    }

    /** Thirteen ratios and an axle 7 % off make eighteen ratios fit nearly all the driving, by the splits. */
    @Test
    void a_log_of_another_box_that_happens_to_fit_is_doubted_and_the_trucks_own_is_not() {
        for (int seed : new int[] {4002, 4026}) {
            RoadDriver drive = RoadTrip.clean(seed);
            RoadLog log = new RoadLog(drive, seed, 10, RoadLog.Style.SNAKE, false);
            GearTable other = RoadTrip.table(4);
            GearTable fitting = new GearTable(
                    other.gears(),
                    other.revsPerKm() * 0.932,
                    other.axleRatio(),
                    other.governedRpm(),
                    other.idleRpm(),
                    other.lowestPullingRpm(),
                    other.rangeStep(),
                    other.splitterRatio(),
                    other.highestStartGear());

            TripResult own = read(log, drive.table);
            TripResult another = read(log, fitting);

            assertThat(doubts(own)).as("own, seed " + seed).isEmpty();
            assertThat(another.summary().gearKnownShare())
                    .as("so good that it raises no doubt by itself")
                    .isGreaterThan(0.8);
            assertThat(doubts(another)).as("other, seed " + seed).isNotEmpty();
        }
    }

    private TripResult read(RoadLog log, GearTable table) {
        Path file = folder.resolve("box.csv");
        log.write(file);
        return ReadTrip.read(
                new TripRequest(file, table, HabitLimits.usual(), log.byHand(), false, Optional.empty()),
                Progress.SILENT);
    }

    private static List<String> doubts(TripResult trip) {
        return DoubtRatios.of(
                "box.csv", trip.factor(), trip.table(), trip.summary().hoursInHand());
    }

    private List<HabitEvent> events(RoadDriver drive, RoadLog log) {
        Path file = folder.resolve("clean.log");
        log.write(file);
        return RoadReport.read(file, drive, log.byHand()).events();
    }
}
