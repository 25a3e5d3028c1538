package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.summary.LogVerdict;
import witnessmark.triplog.summary.TimeSpan;
import witnessmark.triplog.summary.Timeline;

/** A signal that is dead, stuck or wired the wrong way round must not become blame: the kinds that need it cannot be seen. */
class DoubtfulSignalsTest {
    private static final int SPEED = 2;
    private static final int CLUTCH = 3;
    private static final int CLUTCH_PEDAL = 4;
    private static final int ACCELERATOR = 5;
    private static final int LEVER = 8;
    private static final Set<EventKind> BY_PEDAL = EnumSet.of(
            EventKind.SHIFT_WITHOUT_CLUTCH,
            EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH,
            EventKind.RIDING_CLUTCH,
            EventKind.CLUTCH_SLIP,
            EventKind.CLUTCH_DROPPED);

    private final GearTable table = InventedTrucks.thirteen();

    @TempDir
    private Path folder;

    private TripResult read(SimulatedDrive drive, UnaryOperator<String[]> change) {
        Path file = folder.resolve("drive.csv");
        drive.writeCsv(file, Recording.usual(10), 3);
        EventDetectionTest.rewrite(
                file, line -> line.startsWith("time") ? line : String.join(",", change.apply(line.split(",", -1))));
        return ReadTrip.read(TripRequest.of(file, table), Progress.SILENT);
    }

    private static UnaryOperator<String[]> clutch(UnaryOperator<String> change) {
        return cells -> {
            cells[CLUTCH] = change.apply(cells[CLUTCH]);
            cells[CLUTCH_PEDAL] = "";
            return cells;
        };
    }

    private static void cannotBeSeenByPedal(TripResult trip, String why) {
        for (EventKind kind : BY_PEDAL) {
            LogVerdict verdict = trip.summary().verdict(kind);
            assertThat(verdict.state()).as(kind + ": " + verdict.reason()).isEqualTo(LogVerdict.State.CANNOT_BE_SEEN);
            assertThat(verdict.reason()).contains(why);
        }
        assertThat(trip.events()).noneMatch(e -> BY_PEDAL.contains(e.kind()));
    }

    @Test
    void a_clutch_switch_that_never_changes_blames_nobody() {
        SimulatedDrive drive = DriveScripts.proper(table, 5, 6);

        cannotBeSeenByPedal(read(drive, clutch(c -> "0")), "clutch never changes");
        cannotBeSeenByPedal(read(drive, clutch(c -> "1")), "clutch never changes");
    }

    @Test
    void a_clutch_switch_wired_the_wrong_way_round_blames_nobody() {
        TripResult trip = read(DriveScripts.proper(table, 5, 6), clutch(c -> c.equals("0") ? "1" : "0"));

        cannotBeSeenByPedal(trip, "pressed in most of the driving");
    }

    @Test
    void a_clutch_switch_that_dies_on_the_way_contradicts_the_starts() {
        SimulatedDrive drive = DriveScripts.proper(table, 5, 6);
        double half = drive.seconds() / 2;

        TripResult trip = read(drive, cells -> {
            cells[CLUTCH] = Double.parseDouble(cells[0]) > half ? "0" : cells[CLUTCH];
            cells[CLUTCH_PEDAL] = "";
            return cells;
        });

        cannotBeSeenByPedal(trip, "starts from rest");
    }

    /** Once the driver's way is known by the other shifts, several of them in a row without the pedal are the signal's. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 10})
    void a_clutch_signal_that_stands_still_from_start_to_stop_blames_nobody(double hertz) {
        SimulatedDrive drive = DriveScripts.proper(table, 5, 8);
        Path file = folder.resolve("drive.csv");
        drive.writeCsv(file, Recording.usual(hertz), 3);
        TripResult sound = ReadTrip.read(TripRequest.of(file, table), Progress.SILENT);
        TimeSpan still = longestRoll(sound);
        EventDetectionTest.rewrite(file, line -> {
            String[] cells = line.split(",", -1);
            boolean isStill = !line.startsWith("time") && isWithin(Double.parseDouble(cells[0]), still);
            cells[CLUTCH] = isStill ? "0" : cells[CLUTCH];
            cells[CLUTCH_PEDAL] = isStill ? "0" : cells[CLUTCH_PEDAL];
            return String.join(",", cells);
        });

        TripResult trip = ReadTrip.read(TripRequest.of(file, table), Progress.SILENT);

        assertThat(sound.summary().leverShifts()).isEqualTo(trip.summary().leverShifts());
        // The one shift in which the signal froze may have lost its second press.
        assertThat(trip.events())
                .filteredOn(e -> BY_PEDAL.contains(e.kind()))
                .hasSizeLessThan(2)
                .noneMatch(e -> e.kind() == EventKind.SHIFT_WITHOUT_CLUTCH);
    }

    private static boolean isWithin(double seconds, TimeSpan span) {
        return seconds * 1e6 > span.fromMicros() && seconds * 1e6 < span.toMicros();
    }

    /** The longest stretch from a moment after a start to a moment before the stop. */
    private static TimeSpan longestRoll(TripResult trip) {
        TimeSpan longest = new TimeSpan(0, 0);
        long begin = -1;
        for (Timeline.Bin bin : trip.timeline()) {
            boolean rolls = bin.inHand() != InHand.STANDING && bin.meanKmh() > 5;
            begin = !rolls ? -1 : begin < 0 ? bin.startMicros() : begin;
            if (rolls && bin.startMicros() - begin > longest.toMicros() - longest.fromMicros()) {
                longest = new TimeSpan(begin, bin.startMicros());
            }
        }
        return new TimeSpan(longest.fromMicros() + 8_000_000, longest.toMicros() - 2_000_000);
    }

    @Test
    void a_sound_clutch_switch_is_believed() {
        TripResult trip = read(DriveScripts.proper(table, 5, 6), clutch(c -> c));

        assertThat(trip.summary().verdict(EventKind.SHIFT_WITHOUT_CLUTCH).state())
                .isEqualTo(LogVerdict.State.NOT_SEEN_THOUGH_POSSIBLE);
    }

    @Test
    void a_lever_that_shows_neutral_for_ever_says_nothing_of_the_range_knob() {
        TripResult trip = read(DriveScripts.proper(table, 5, 6), cells -> {
            cells[LEVER] = "0";
            return cells;
        });

        assertThat(trip.events()).isEmpty();
        assertThat(trip.summary().verdict(EventKind.RANGE_MOVED_IN_NEUTRAL))
                .extracting(LogVerdict::state, LogVerdict::reason)
                .containsExactly(
                        LogVerdict.State.CANNOT_BE_SEEN, "the log's lever never changes, though the truck was driven");
    }

    @Test
    void an_accelerator_that_shows_nothing_for_ever_says_nothing_of_lugging() {
        TripResult trip = read(DriveScripts.habits(table, 21), cells -> {
            cells[ACCELERATOR] = "0.0";
            return cells;
        });

        assertThat(trip.summary().verdict(EventKind.LUGGING).state()).isEqualTo(LogVerdict.State.CANNOT_BE_SEEN);
    }

    @Test
    void slip_in_a_log_without_clutch_pedal_is_not_claimed() {
        TripResult trip = read(DriveScripts.habits(table, 22), clutch(c -> ""));

        cannotBeSeenByPedal(trip, "the log has no clutch");
    }

    @Test
    void a_road_speed_that_is_twelve_per_cent_high_is_put_right_or_the_gears_are_not_believed() {
        SimulatedDrive drive = DriveScripts.habits(table, 23);
        UnaryOperator<String[]> high = cells -> {
            // The drive is written with 0.97 of the true speed.
            cells[SPEED] = cells[SPEED].isEmpty() ? "" : String.valueOf(Double.parseDouble(cells[SPEED]) * 1.12 / 0.97);
            return cells;
        };

        TripResult trip = read(drive, high);

        boolean right = Math.abs(trip.factor().factor() * 1.12 - 1) < 0.01;
        assertThat(right || trip.factor().misfit()).isTrue();
        if (!right) {
            assertThat(trip.summary().verdict(EventKind.SHIFT_WITHOUT_CLUTCH).reason())
                    .contains("the gears fit poorly");
            assertThat(trip.events()).noneMatch(e -> e.kind().needsGear());
        }
    }

    /** A receiver of satellites tells its speed once a second, and half a second late. */
    @Test
    void a_road_speed_that_comes_once_a_second_shows_neither_slip_nor_floats_nor_splits() {
        double[] second = {-1};
        String[] held = {"0"};
        String[] next = {"0"};
        TripResult trip = read(DriveScripts.proper(table, 5, 6), cells -> {
            double time = Double.parseDouble(cells[0]);
            held[0] = Math.floor(time) != second[0] ? next[0] : held[0];
            second[0] = Math.floor(time);
            next[0] = time - second[0] < 0.55 ? cells[SPEED] : next[0];
            cells[SPEED] = held[0];
            return cells;
        });

        for (EventKind kind : EventKind.values()) {
            if (kind.needsRatioAtOnce()) {
                assertThat(trip.events()).noneMatch(e -> e.kind() == kind);
                assertThat(trip.summary().verdict(kind).reason()).contains("once a second, as by satellite");
            }
        }
    }
}
