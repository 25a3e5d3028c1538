package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.summary.LogVerdict;

/** Against the truth of simulated drives: what the truck of the simulation did is known to the hundredth of a second. */
class EventDetectionTest {
    /** Shift-like kinds that a row every five seconds cannot show. */
    private static final Set<EventKind> MOMENTARY = EnumSet.of(
            EventKind.LOW_RANGE_ABOVE_CEILING,
            EventKind.OVERDRIVE_TO_LOW,
            EventKind.START_IN_HIGH_RANGE,
            EventKind.START_GEAR_TOO_HIGH,
            EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH,
            EventKind.SHIFT_WITHOUT_CLUTCH,
            EventKind.CLUTCH_SLIP,
            EventKind.RIDING_CLUTCH,
            EventKind.CLUTCH_FLOORED_ROLLING,
            EventKind.RANGE_MOVED_IN_NEUTRAL,
            EventKind.RANGE_MOVED_IN_REVERSE,
            EventKind.CLUTCH_DROPPED,
            EventKind.DISC_OVERSPEED,
            EventKind.GEAR_AGAINST_ROLL,
            EventKind.SPLIT_UNDER_TORQUE);

    @TempDir
    private Path folder;

    static Stream<Arguments> trucks() {
        return Stream.of(
                Arguments.of("10 ratios", InventedTrucks.ten()),
                Arguments.of("13 ratios", InventedTrucks.thirteen()),
                Arguments.of("18 ratios", InventedTrucks.eighteen()));
    }

    private TripResult read(SimulatedDrive drive, GearTable table, Recording how) {
        Path file = folder.resolve("drive.csv");
        drive.writeCsv(file, how, 11);
        return ReadTrip.read(TripRequest.of(file, table), Progress.SILENT);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("trucks")
    void ten_rows_a_second_show_at_least_95_of_100_events_and_few_false_ones(String name, GearTable table) {
        DetectionScore score = new DetectionScore();

        for (long seed = 21; seed < 25; seed++) {
            SimulatedDrive drive = DriveScripts.habits(table, seed);
            score.add(drive, read(drive, table, Recording.usual(10)).events(), 0);
        }

        for (EventKind kind : EventKind.values()) {
            assertThat(score.recall(kind)).as("recall of " + kind).isGreaterThanOrEqualTo(0.95);
            assertThat(score.precision(kind)).as("precision of " + kind).isGreaterThanOrEqualTo(0.95);
        }
        assertThat(score.truths(EventKind.LOW_RANGE_ABOVE_CEILING)).isGreaterThanOrEqualTo(6);
    }

    /** A start that slips for long in a high gear may be told at this rate as one in a gear less high; hence 0.85. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("trucks")
    void five_rows_a_second_show_nearly_as_much_and_say_what_they_cannot_show(String name, GearTable table) {
        DetectionScore score = new DetectionScore();
        Set<EventKind> blind = EnumSet.noneOf(EventKind.class);

        for (long seed = 21; seed < 25; seed++) {
            SimulatedDrive drive = DriveScripts.habits(table, seed);
            TripResult trip = read(drive, table, Recording.usual(5));
            score.add(drive, trip.events(), 0);
            trip.summary().verdicts().stream()
                    .filter(v -> v.state() == LogVerdict.State.CANNOT_BE_SEEN)
                    .forEach(v -> blind.add(v.kind()));
        }

        assertThat(blind).doesNotContain(EventKind.LOW_RANGE_ABOVE_CEILING, EventKind.START_IN_HIGH_RANGE);
        for (EventKind kind : EnumSet.complementOf(EnumSet.copyOf(blind))) {
            assertThat(score.recall(kind)).as("recall of " + kind).isGreaterThanOrEqualTo(0.9);
            assertThat(score.precision(kind)).as("precision of " + kind).isGreaterThanOrEqualTo(0.85);
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("trucks")
    void a_row_every_five_seconds_says_that_shifts_and_starts_cannot_be_seen(String name, GearTable table) {
        TripResult trip = read(DriveScripts.habits(table, 21), table, Recording.usual(0.2));

        for (EventKind kind : MOMENTARY) {
            assertThat(trip.summary().verdict(kind).state())
                    .as(kind + ": " + trip.summary().verdict(kind))
                    .isEqualTo(LogVerdict.State.CANNOT_BE_SEEN);
        }
        assertThat(trip.summary().verdict(EventKind.HOT_OIL).state()).isEqualTo(LogVerdict.State.SEEN);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("trucks")
    void proper_driving_is_not_blamed_and_counts_as_not_seen_though_possible(String name, GearTable table) {
        TripResult trip = read(DriveScripts.proper(table, 5, 8), table, Recording.usual(10));

        assertThat(trip.events()).isEmpty();
        assertThat(trip.summary().verdict(EventKind.START_IN_HIGH_RANGE).state())
                .isEqualTo(LogVerdict.State.NOT_SEEN_THOUGH_POSSIBLE);
        assertThat(trip.summary().verdict(EventKind.START_IN_HIGH_RANGE).chances())
                .isEqualTo(8);
    }

    @Test
    void a_candump_log_shows_the_same_events_as_a_csv_log_of_the_drive() {
        GearTable table = InventedTrucks.thirteen();
        SimulatedDrive drive = DriveScripts.habits(table, 22);
        Path file = folder.resolve("drive.candump");
        drive.writeCandump(file, Recording.usual(10), 11);
        DetectionScore score = new DetectionScore();

        TripResult trip = ReadTrip.read(TripRequest.of(file, table), Progress.SILENT);
        score.add(drive, trip.events(), 1_700_000_000.0);

        for (EventKind kind : List.of(
                EventKind.LOW_RANGE_ABOVE_CEILING,
                EventKind.START_IN_HIGH_RANGE,
                EventKind.COAST_IN_NEUTRAL,
                EventKind.ROLLING_ENGINE_STOPPED,
                EventKind.LUGGING,
                EventKind.CLUTCH_DROPPED,
                EventKind.DISC_OVERSPEED,
                EventKind.SPLIT_UNDER_TORQUE,
                EventKind.IDLE_TOO_LOW,
                EventKind.HOT_OIL)) {
            assertThat(score.truths(kind)).as("truths of " + kind).isPositive();
            assertThat(score.recall(kind)).as("recall of " + kind).isGreaterThanOrEqualTo(0.95);
            assertThat(score.precision(kind)).as("precision of " + kind).isGreaterThanOrEqualTo(0.95);
        }
        assertThat(trip.summary().verdict(EventKind.RANGE_MOVED_IN_NEUTRAL))
                .extracting(LogVerdict::state, LogVerdict::reason)
                .containsExactly(LogVerdict.State.CANNOT_BE_SEEN, "the log has no range knob");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("trucks")
    void worn_or_wrongly_entered_tyres_are_found_from_the_ratios(String name, GearTable table) {
        for (double tyre : new double[] {0.93, 0.97, 1.0, 1.05}) {
            Recording how = new Recording(10, 8, 0.15, 0.05, 0.005, tyre);

            TripResult trip = read(DriveScripts.proper(table, 3, 4), table, how);

            assertThat(trip.factor().factor()).isEqualTo(1 / tyre, within(0.006));
            assertThat(trip.factor().isKnown()).isTrue();
        }
    }

    @Test
    void ratios_of_another_truck_make_the_gear_kinds_impossible_to_see() {
        SimulatedDrive drive = DriveScripts.proper(InventedTrucks.ten(), 4, 5);
        GearTable wrong = new GearTable(
                InventedTrucks.ten().gears().stream()
                        .filter(g -> g.ratio() > 2.5)
                        .toList(),
                320,
                3.9,
                2100,
                650,
                1100,
                3.78,
                Optional.empty(),
                Optional.empty());

        TripResult trip = read(drive, wrong, Recording.usual(10));

        assertThat(trip.summary().verdict(EventKind.LUGGING))
                .extracting(LogVerdict::state)
                .isEqualTo(LogVerdict.State.CANNOT_BE_SEEN);
        assertThat(trip.summary().verdict(EventKind.LUGGING).reason()).startsWith("the gear cannot be told");
    }

    @Test
    void speed_jumps_are_reported_and_do_not_make_other_events() {
        GearTable table = InventedTrucks.ten();
        SimulatedDrive drive = DriveScripts.proper(table, 6, 4);
        Path file = folder.resolve("jumps.csv");
        drive.writeCsv(file, Recording.usual(10), 1);
        int[] row = new int[1];
        rewrite(file, line -> ++row[0] % 1500 == 1200 ? line.replaceFirst("^([^,]*,[^,]*),[^,]*", "$1,148.00") : line);

        TripResult trip = ReadTrip.read(TripRequest.of(file, table), Progress.SILENT);

        assertThat(trip.events()).isNotEmpty();
        assertThat(trip.events()).allMatch(e -> e.kind() == EventKind.IMPOSSIBLE_SPEED_JUMP);
    }

    @Test
    void each_second_gets_a_gear_that_is_right_with_a_confidence() {
        GearTable table = InventedTrucks.thirteen();
        SimulatedDrive drive = new SimulatedDrive(table, 1);
        drive.stand(4).start("1").drive(20, 0, 30).stop();
        Path file = folder.resolve("one-gear.csv");
        drive.writeCsv(file, Recording.usual(10), 1);
        List<GearSecond> seconds = new ArrayList<>();
        TripRequest request =
                new TripRequest(file, table, HabitLimits.usual(), Optional.empty(), false, Optional.of(seconds::add));

        ReadTrip.read(request, Progress.SILENT);

        assertThat(seconds.get(1).inHand()).isEqualTo("standing");
        assertThat(seconds.stream().filter(s -> s.inHand().equals("1") && s.confidence() > 0.9))
                .hasSizeGreaterThanOrEqualTo(18);
        List<String> apart = List.of("1", "standing", "pedal down", "cannot tell", "neutral");
        // While the clutch takes hold the ratio sweeps past the crawler gear.
        assertThat(seconds.stream().filter(s -> !apart.contains(s.inHand()))).hasSizeLessThanOrEqualTo(2);
    }

    static void rewrite(Path file, UnaryOperator<String> change) {
        try {
            List<String> lines = Files.readAllLines(file);
            Files.write(file, lines.stream().map(change).toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
