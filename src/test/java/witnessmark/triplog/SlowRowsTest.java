package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.summary.LogVerdict;

/**
 * What one or two rows a second still show, and what passes between the rows; rows written by hand. That an engine falls by
 * the step of the gears in a shift, and that a foot may leave the pedal and come back within two seconds, is mechanics and
 * common practice, no source.
 */
class SlowRowsTest {
    private static final GearTable TABLE = InventedTrucks.thirteen();

    @TempDir
    private Path folder;

    private final StringBuilder log = new StringBuilder();
    private double seconds;

    private static double locked(String gear, double kmh) {
        return InventedTrucks.engineRpm(TABLE, gear, kmh);
    }

    private void row(double apart, double rpm, double kmh, Object... more) {
        log.append(String.format(Locale.ROOT, "%.1f,%.1f,%.2f", seconds, rpm, kmh));
        seconds += apart;
        for (Object value : more) {
            log.append(',').append(value);
        }
        log.append('\n');
    }

    private TripResult read(String more) throws IOException {
        Path file = Files.writeString(folder.resolve("slow.csv"), "time_s,engine_rpm,speed_kmh," + more + "\n" + log);
        return ReadTrip.read(TripRequest.of(file, TABLE), Progress.SILENT);
    }

    private static long count(TripResult trip, EventKind kind) {
        return trip.events().stream().filter(e -> e.kind() == kind).count();
    }

    /** A start at a row a second, the pedal up all the way; on the way the engine shows so many rpm, after 1,000. */
    @ParameterizedTest
    @CsvSource({"970, 1", "860, 0"})
    void an_engine_that_fell_between_two_rows_a_second_apart_hides_a_shift(double rpm, int starts) throws IOException {
        for (int i = 0; i < 20; i++) {
            row(1, 600, 0, i == 19 ? 1 : 0);
        }
        row(1, 850, 4.5, 0);
        row(1, 1000, 9, 0);
        row(1, rpm, 13.5, 0);
        for (double kmh = 18; kmh < 26; kmh += 0.4) {
            row(1, locked("5", kmh), kmh, 0);
        }

        assertThat(count(read("clutch"), EventKind.START_IN_HIGH_RANGE)).isEqualTo(starts);
    }

    /** In gear, in neutral and in gear again; the knob goes down in the row of this number, the lever out from 20 to 23. */
    private TripResult rollThroughNeutral(double apart, int knobRow) throws IOException {
        for (int i = 0; i < 60; i++) {
            boolean out = i >= 20 && i < 24;
            double kmh = 30 + 0.05 * i;
            row(apart, out ? 900 : locked("5", kmh), kmh, out ? 0 : 1, i < knobRow ? 1 : 0);
        }
        return read("lever,range_knob");
    }

    @Test
    void two_rows_a_second_show_a_knob_that_moves_in_neutral() throws IOException {
        assertThat(count(rollThroughNeutral(0.5, 22), EventKind.RANGE_MOVED_IN_NEUTRAL))
                .isOne();
    }

    @ParameterizedTest
    @CsvSource({"0.5, 18, NOT_SEEN_THOUGH_POSSIBLE", "1, 22, CANNOT_BE_SEEN"})
    void a_knob_that_moves_in_gear_is_none_and_one_row_a_second_does_not_tell(
            double apart, int knobRow, LogVerdict.State state) throws IOException {
        TripResult trip = rollThroughNeutral(apart, knobRow);

        assertThat(count(trip, EventKind.RANGE_MOVED_IN_NEUTRAL)).isZero();
        assertThat(trip.summary().verdict(EventKind.RANGE_MOVED_IN_NEUTRAL).state())
                .isEqualTo(state);
    }

    /** Two rows with the pedal so far down at 40 km/h. */
    @ParameterizedTest
    @CsvSource({"1, 100, 1", "1, 90, 0", "2, 100, 0"})
    void a_row_a_second_shows_a_pedal_at_the_floor_and_a_row_in_two_seconds_does_not(
            double apart, int pedal, int floored) throws IOException {
        for (int i = 0; i < 60; i++) {
            boolean down = i == 30 || i == 31;
            double kmh = 40 + 0.05 * i;
            row(apart, down ? 700 : locked("6", kmh), kmh, down ? pedal : 0);
        }

        assertThat(count(read("clutch_pedal_pct"), EventKind.CLUTCH_FLOORED_ROLLING))
                .isEqualTo(floored);
    }
}
