package witnessmark.triplog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.triplog.event.EventFigure;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.summary.LogVerdict;

/** Driving that comes close to an event and is none, beside the event it comes close to; rows written by hand, 10 a second. */
class NearMissTest {
    private static final double STEP = 0.1;

    private GearTable table = InventedTrucks.ten();
    private final StringBuilder log =
            new StringBuilder("time_s,engine_rpm,speed_kmh,clutch,accel_pct,engine_torque_pct,lever,pto\n");
    private int row;

    @TempDir
    private Path folder;

    private KnobGear gear(String name) {
        return table.gears().stream()
                .filter(g -> g.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private double locked(String name, double kmh) {
        return kmh * table.outputRpmPerKmh() * gear(name).ratio();
    }

    private void row(double rpm, double kmh, int clutch, double accelerator, double torque, int lever, int pto) {
        log.append(String.format(
                Locale.ROOT,
                "%.1f,%.1f,%.2f,%d,%.0f,%.0f,%d,%d%n",
                row++ * STEP,
                rpm,
                kmh,
                clutch,
                accelerator,
                torque,
                lever,
                pto));
    }

    /** In gear from one road speed to another. */
    private void drive(String name, double seconds, double fromKmh, double toKmh, double pedal) {
        int rows = (int) Math.round(seconds / STEP);
        for (int i = 1; i <= rows; i++) {
            double kmh = fromKmh + (toKmh - fromKmh) * i / rows;
            row(locked(name, kmh), kmh, 0, pedal, pedal, gear(name).lever(), 0);
        }
    }

    /** Out of gear, or with the clutch between: engine and road on their own. */
    private void free(
            double seconds, double fromRpm, double toRpm, double fromKmh, double toKmh, int clutch, int lever) {
        int rows = (int) Math.round(seconds / STEP);
        for (int i = 1; i <= rows; i++) {
            double done = (double) i / rows;
            row(fromRpm + (toRpm - fromRpm) * done, fromKmh + (toKmh - fromKmh) * done, clutch, 0, 0, lever, 0);
        }
    }

    private void stand(double seconds, double rpm) {
        free(seconds, rpm, rpm, 0, 0, 0, 0);
    }

    private TripResult read() throws IOException {
        Path file = Files.writeString(folder.resolve("drive.csv"), log);
        return ReadTrip.read(TripRequest.of(file, table), Progress.SILENT);
    }

    private List<HabitEvent> found(EventKind kind) throws IOException {
        return read().events().stream().filter(e -> e.kind() == kind).toList();
    }

    /** Stands, lets the clutch in at {@code rpm} so that first gear has hold of it after {@code seconds}, drives on. */
    private void start(double rpm, double caughtRpm, double seconds) {
        stand(3, 650);
        free(1, 650, rpm, 0, 0, 1, 1);
        double caught = caughtRpm / locked("1", 1);
        free(seconds, rpm, caughtRpm, 0, caught, 0, 1);
        drive("1", 6, caught, caught + 3, 40);
    }

    @Test
    void a_clutch_let_in_at_one_blow_is_told_with_the_fall_of_engine_speed() throws IOException {
        start(1700, 700, 0.3);

        HabitEvent dropped = found(EventKind.CLUTCH_DROPPED).get(0);

        assertThat(dropped.figures().get(EventFigure.FALL_RPM)).isEqualTo(1000.0);
        // 3.5 kg m2 x 1000 rpm in 0.3 s x pi / 30
        assertThat(dropped.figures().get(EventFigure.INERTIA_TORQUE_NM))
                .isCloseTo(1221.7, org.assertj.core.api.Assertions.within(0.1));
        assertThat(dropped.gearAfter()).contains("1");
    }

    /** From governed speed a fall of 500 rpm is less than a quarter; 3.5 kg m2 x 500 rpm in 0.1 s x pi / 30 is 1,833 Nm. */
    @ParameterizedTest
    @CsvSource({"0.1, 1", "0.6, 0"})
    void a_fall_of_less_than_a_quarter_is_a_blow_only_if_it_is_over_at_once(double seconds, int blows)
            throws IOException {
        start(2100, 1600, seconds);

        assertThat(found(EventKind.CLUTCH_DROPPED)).hasSize(blows);
    }

    @Test
    void a_start_at_high_engine_speed_that_slips_in_over_two_seconds_is_none() throws IOException {
        start(1500, 750, 2);

        assertThat(found(EventKind.CLUTCH_DROPPED)).isEmpty();
    }

    @Test
    void an_engine_that_falls_from_a_rev_in_neutral_before_a_start_is_none() throws IOException {
        stand(3, 650);
        free(0.5, 650, 1600, 0, 0, 0, 0);
        free(0.6, 1600, 1000, 0, 0, 0, 0);
        free(4, 1000, 650, 0, 0, 0, 0);
        start(900, 750, 2);

        assertThat(found(EventKind.CLUTCH_DROPPED)).isEmpty();
    }

    private void rollWithPedalDown(double topKmh, int lever) {
        stand(3, 650);
        start(800, 700, 2);
        drive("1", 10, 6.5, 8, 40);
        free(4, 700, 650, 8, topKmh, 1, lever);
        free(6, 650, 650, topKmh, 7, 1, lever);
        free(0.4, 650, locked("1", 7), 7, 7, 1, 1);
        drive("1", 5, 7, 8, 30);
    }

    @Test
    void the_disc_is_oversped_by_the_road_with_the_pedal_down_in_a_low_gear() throws IOException {
        rollWithPedalDown(14, 1);

        HabitEvent event = found(EventKind.DISC_OVERSPEED).get(0);

        // 14 km/h x 20.8 rpm per km/h x 11.08 in first gear, over 2,100 rpm governed
        assertThat(event.figures().get(EventFigure.GOVERNED_MULTIPLE))
                .isCloseTo(14 * 20.8 * 2.93 * 3.78 / 2100, org.assertj.core.api.Assertions.within(0.02));
        assertThat(event.engineRpm()).isLessThan(700);
    }

    @Test
    void a_little_above_governed_speed_or_with_the_lever_in_neutral_it_is_not() throws IOException {
        rollWithPedalDown(10.5, 1);
        rollWithPedalDown(14, 0);

        assertThat(found(EventKind.DISC_OVERSPEED)).isEmpty();
    }

    /** The engine turns with the wheels: a foot that rests on the pedal, and the engine's overspeed is told as such. */
    @Test
    void an_engine_that_turns_with_the_disc_is_oversped_itself_and_not_the_disc_behind_an_open_clutch()
            throws IOException {
        stand(3, 650);
        start(800, 700, 2);
        drive("1", 10, 6.5, 13, 0);
        for (int i = 0; i < 20; i++) {
            row(locked("1", 13), 13, 1, 0, 0, 1, 0);
        }
        drive("1", 5, 13, 8, 0);

        assertThat(found(EventKind.DISC_OVERSPEED)).isEmpty();
        assertThat(found(EventKind.ENGINE_OVERSPEED)).hasSize(1);
    }

    @Test
    void reverse_after_the_truck_stood_is_none_and_before_it_stood_is_one() throws IOException {
        start(800, 700, 2);
        free(2, 700, 650, 6, 0, 1, 1);
        stand(1, 650);
        free(1, 650, 650, 0, 0, 1, -1);
        free(5, 650, 650, 1, 4, 0, -1);
        free(2, 650, 650, 4, 0, 1, -1);
        stand(1, 650);
        assertThat(found(EventKind.GEAR_AGAINST_ROLL)).isEmpty();
        assertThat(read().summary().verdict(EventKind.GEAR_AGAINST_ROLL).state())
                .isEqualTo(LogVerdict.State.NOT_SEEN_THOUGH_POSSIBLE);

        start(800, 700, 2);
        free(0.5, 700, 650, 6, 5, 1, 0);
        free(3, 650, 650, 5, 0, 1, -1);
        assertThat(found(EventKind.GEAR_AGAINST_ROLL))
                .singleElement()
                .extracting(HabitEvent::sentence)
                .asString()
                .startsWith("Reverse taken at 5 km/h while the truck still rolled forward");
    }

    private void split(double pedal, double torque) {
        table = InventedTrucks.thirteen();
        start(800, 700, 2);
        drive("7", 10, 50, 52, 60);
        double from = locked("7", 52);
        double to = locked("7-over", 52);
        for (int i = 1; i <= 3; i++) {
            row(from + (to - from) * i / 3, 52, 0, pedal, torque, 3, 0);
        }
        drive("7-over", 10, 52, 53, 60);
    }

    @Test
    void a_split_with_the_torque_on_is_told_and_one_with_a_short_lift_is_not() throws IOException {
        split(60, 55);
        assertThat(found(EventKind.SPLIT_UNDER_TORQUE)).hasSize(1);

        log.setLength(log.indexOf("\n") + 1);
        row = 0;
        split(5, 0);
        assertThat(found(EventKind.SPLIT_UNDER_TORQUE)).isEmpty();
        assertThat(read().summary().verdict(EventKind.SPLIT_UNDER_TORQUE).chances())
                .isEqualTo(1);
    }

    /** Four seconds at an engine speed ahead of the overdrive, torque on and pedal up, and back into it. */
    private void ahead(DoubleUnaryOperator rpm) {
        table = InventedTrucks.thirteen();
        start(800, 700, 2);
        drive("7-over", 10, 50, 52, 80);
        for (int i = 0; i < 40; i++) {
            double kmh = 52 + 2.6 * i / 40;
            row(rpm.applyAsDouble(kmh), kmh, 0, 80, 75, 3, 0);
        }
        drive("7-over", 10, 54.6, 57, 80);
    }

    /** A clutch carries one torque and lets the engine keep its speed, dogs tie it to the wheels: mechanics, from memory. */
    @Test
    void a_split_made_and_taken_back_under_torque_is_two_splits_and_no_slip() throws IOException {
        ahead(kmh -> locked("7", kmh));

        assertThat(found(EventKind.SPLIT_UNDER_TORQUE)).hasSize(2);
        assertThat(found(EventKind.CLUTCH_SLIP)).isEmpty();
    }

    @Test
    void a_clutch_that_slips_as_much_as_a_split_while_the_engine_keeps_its_speed_is_no_split() throws IOException {
        ahead(kmh -> locked("7", 53));

        assertThat(found(EventKind.CLUTCH_SLIP)).hasSize(1);
        assertThat(found(EventKind.SPLIT_UNDER_TORQUE)).isEmpty();
    }

    /** The engine a split ahead for two seconds at a steady speed, torque on; then it comes back with the torque off. */
    private void aheadUntilTorqueWasOffFor(double seconds) {
        table = InventedTrucks.thirteen();
        start(800, 700, 2);
        drive("7-over", 10, 50, 52, 80);
        for (int i = 0; i < 20; i++) {
            row(locked("7", 52), 52, 0, 80, 75, 3, 0);
        }
        for (int i = 0; i < Math.round(10 * seconds); i++) {
            row(locked("7", 52), 52, 0, 0, 0, 3, 0);
        }
        for (int i = 0; i < 8; i++) {
            row(locked("7-over", 52), 52, 0, 0, 0, 3, 0);
        }
        drive("7-over", 10, 52, 57, 80);
    }

    /** With the torque off a clutch that slipped takes hold within a tenth of a second: mechanics, from memory. */
    @Test
    void a_split_that_stayed_when_the_torque_went_was_made_under_torque() throws IOException {
        aheadUntilTorqueWasOffFor(0.6);

        assertThat(found(EventKind.SPLIT_UNDER_TORQUE)).hasSize(1);
        assertThat(found(EventKind.CLUTCH_SLIP)).isEmpty();
    }

    @Test
    void an_engine_that_came_back_as_the_torque_went_may_have_slipped() throws IOException {
        aheadUntilTorqueWasOffFor(0.1);

        assertThat(found(EventKind.SPLIT_UNDER_TORQUE)).isEmpty();
    }

    @Test
    void an_engine_that_takes_its_own_torque_off_is_not_blamed_for_a_held_accelerator() throws IOException {
        split(60, 0);

        assertThat(found(EventKind.SPLIT_UNDER_TORQUE)).isEmpty();
    }

    @Test
    void an_idle_a_little_low_or_low_for_a_moment_is_none() throws IOException {
        stand(40, 0.96 * 650);
        free(1, 624, 500, 0, 0, 0, 0);
        free(1, 500, 640, 0, 0, 0, 0);
        stand(40, 640);
        assertThat(found(EventKind.IDLE_TOO_LOW)).isEmpty();
        assertThat(read().summary().verdict(EventKind.IDLE_TOO_LOW).state())
                .isEqualTo(LogVerdict.State.NOT_SEEN_THOUGH_POSSIBLE);

        free(1, 640, 560, 0, 0, 0, 0);
        stand(30, 560);
        assertThat(found(EventKind.IDLE_TOO_LOW)).hasSize(1);
    }

    @Test
    void a_hard_stop_is_no_speed_jump() throws IOException {
        start(800, 700, 2);
        drive("10", 20, 60, 72, 50);
        // 72 km/h to rest in 2.5 s: 8 m/s2, about the hardest stop on a dry road
        free(2.5, 1500, 650, 72, 0, 1, 0);
        stand(3, 650);

        assertThat(found(EventKind.IMPOSSIBLE_SPEED_JUMP))
                .allMatch(e -> e.figures().get(EventFigure.FROM_KMH) < 10);
    }

    /** 90 km/h to rest in 3 s, a row every two seconds: one step of 60 km/h. A step up by as much is none of a truck. */
    @Test
    void a_hard_stop_is_no_speed_jump_where_rows_are_two_seconds_apart() throws IOException {
        slowLog(60, 70, 80, 85, 90, 90, 30, 0, 0, 0);
        assertThat(found(EventKind.IMPOSSIBLE_SPEED_JUMP)).isEmpty();

        slowLog(0, 0, 0, 5, 10, 12, 72, 74, 74);
        assertThat(found(EventKind.IMPOSSIBLE_SPEED_JUMP)).hasSize(1);
    }

    private void slowLog(int... kmh) {
        log.setLength(0);
        log.append("time_s,engine_rpm,speed_kmh\n");
        for (int i = 0; i < kmh.length; i++) {
            log.append(2 * i).append(",900,").append(kmh[i]).append('\n');
        }
    }

    @Test
    void rolling_to_a_stop_with_the_pedal_down_at_idle_is_no_riding() throws IOException {
        start(800, 700, 2);
        drive("2", 10, 9, 15, 40);
        free(0.3, locked("2", 15), 650, 15, 15, 1, 2);
        // Road speed falls past the speed at which second gear would turn the engine at idle.
        free(12, 650, 650, 15, 1, 1, 2);
        stand(3, 650);

        assertThat(found(EventKind.RIDING_CLUTCH)).isEmpty();
    }

    @Test
    void a_foot_that_rests_on_the_pedal_while_the_gear_drives_is_riding() throws IOException {
        start(800, 700, 2);
        drive("2", 6, 9, 15, 40);
        for (int i = 0; i < 80; i++) {
            row(locked("2", 15), 15, 1, 40, 40, 2, 0);
        }
        drive("2", 4, 15, 15, 40);

        assertThat(found(EventKind.RIDING_CLUTCH)).hasSize(1);
    }

    @Test
    void a_truck_that_rolls_off_downhill_at_idle_and_takes_a_gear_is_not_started_in_it() throws IOException {
        stand(3, 650);
        free(8, 650, 650, 0, 25, 1, 0);
        drive("6", 8, 25, 27, 30);

        assertThat(found(EventKind.START_IN_HIGH_RANGE)).isEmpty();
    }

    @Test
    void a_start_that_changed_gear_before_the_first_one_showed_is_not_told_by_the_second() throws IOException {
        start(900, 750, 2);
        assertThat(found(EventKind.START_GEAR_TOO_HIGH)).isEmpty();

        stand(3, 650);
        free(1, 650, 900, 0, 0, 1, 1);
        free(2, 900, 900, 0, 4, 1, 1);
        free(0.5, 900, 1000, 4, 5, 0, 1);
        free(1, 1000, 900, 5, 7, 1, 5);
        drive("5", 8, 14, 18, 40);

        assertThat(found(EventKind.START_GEAR_TOO_HIGH)).isEmpty();
    }

    /** Engine sped up to where the next shorter gear would have it, pedal down, and back. */
    @Test
    void an_engine_that_flares_up_with_the_pedal_down_is_no_shift() throws IOException {
        start(800, 700, 2);
        free(3, 650, locked("8", 50), 50, 50, 1, 0);
        drive("8", 8, 50, 52, 40);
        double flared = locked("7", 52);
        for (int i = 0; i < 9; i++) {
            row(flared, 52, 1, 0, 0, gear("8").lever(), 0);
        }
        drive("8", 8, 52, 52, 40);

        assertThat(read().summary().shifts()).isEqualTo(1);
        assertThat(found(EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH)).hasSizeLessThan(2);
    }

    @Test
    void a_truck_that_rolls_off_in_neutral_before_it_takes_a_high_gear_is_not_started_in_it() throws IOException {
        stand(5, 650);
        free(9, 650, 650, 0, 14, 0, 0);
        free(0.6, 650, locked("6", 14), 14, 14, 1, 1);
        drive("6", 8, 14, 24, 50);
        double rolled = found(EventKind.START_IN_HIGH_RANGE).size();
        stand(5, 650);
        free(7, 650, locked("6", 14), 0, 14, 1, 1);
        drive("6", 8, 14, 24, 50);

        assertThat(rolled).isZero();
        assertThat(found(EventKind.START_IN_HIGH_RANGE)).hasSize(1);
    }

    /** Only what every log has, and the clutch: the lever would tell by itself. */
    private List<HabitEvent> shiftsWithoutLever() throws IOException {
        String[] lines = log.toString().split("\n");
        Path file = Files.write(
                folder.resolve("no-lever.csv"),
                Arrays.stream(lines)
                        .map(line -> String.join(",", Arrays.copyOf(line.split(","), 4)))
                        .toList());
        return ReadTrip.read(TripRequest.of(file, table), Progress.SILENT).events().stream()
                .filter(e ->
                        e.kind() == EventKind.SHIFT_WITHOUT_CLUTCH || e.kind() == EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH)
                .toList();
    }

    private void rollInThird() {
        start(900, 750, 2);
        free(0.3, 900, 1200, 12.5, 12.5, 1, 0);
        free(0.5, 1200, locked("3", 12.5), 12.5, 12.5, 0, 0);
        free(0.3, locked("3", 12.5), locked("3", 12.5), 12.5, 12.5, 1, 0);
        drive("3", 4, 12.5, 15, 30);
    }

    /** Out of third while braking to rest: on its way to idle and back the engine keeps near fourth gear's ratio. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void an_engine_that_falls_to_idle_out_of_gear_while_the_truck_brakes_is_no_shift(int pressed) throws IOException {
        rollInThird();
        drive("3", 0.3, 15, 14, 0);
        free(0.2, locked("3", 14), 1700, 14, 13.4, pressed, 0);
        free(2.2, 1700, 660, 13.4, 7.4, 0, 0);
        free(2.6, 660, 655, 7.4, 0, 0, 0);
        stand(4, 650);

        assertThat(shiftsWithoutLever()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0, SHIFT_WITHOUT_CLUTCH", "1, SHIFT_WITHOUT_DOUBLE_CLUTCH"})
    void a_gear_that_stays_in_hand_after_fewer_than_two_presses_is_one(int pressed, EventKind kind) throws IOException {
        rollInThird();
        free(0.2, locked("3", 15), 1800, 15, 15, pressed, 0);
        free(0.6, 1800, locked("4", 15), 15, 15, 0, 0);
        drive("4", 2.2, 15, 14, 0);
        free(1, locked("4", 14), 650, 14, 12, 1, 0);
        free(4, 650, 650, 12, 0, 0, 0);
        stand(4, 650);

        assertThat(shiftsWithoutLever()).extracting(HabitEvent::kind).contains(kind);
    }

    /** Three rows without a clutch value may hold the whole second press; three rows with the pedal up hold none. */
    @ParameterizedTest
    @CsvSource({"'', 0", "0, 1", "1, 0"})
    void a_second_press_that_may_lie_where_the_clutch_is_not_told_is_not_missed_by_the_driver(
            String clutch, int singles) throws IOException {
        rollInThird();
        free(0.3, locked("3", 15), 1800, 15, 15, 1, 0);
        free(0.4, 1800, locked("4", 15), 15, 15, 0, 0);
        int press = log.length();
        free(0.3, locked("4", 15), locked("4", 15), 15, 15, 1, 0);
        String untold = log.substring(press).replaceAll("(?m)^((?:[^,]*,){3})1,", "$1" + clutch + ",");
        log.setLength(press);
        log.append(untold);
        drive("4", 6, 15, 18, 30);

        assertThat(shiftsWithoutLever())
                .filteredOn(e -> e.kind() == EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH)
                .hasSize(singles);
    }

    /** In eighth, from a share of the lowest pulling speed to another within so many seconds. */
    private void pull(double seconds, double fromShare, double toShare) {
        double kmh = table.lowestPullingRpm() / locked("8", 1);
        drive("8", 4, 1.2 * kmh, fromShare * kmh, 10);
        drive("8", seconds, fromShare * kmh, toShare * kmh, 75);
        drive("8", 4, toShare * kmh, 1.2 * kmh, 40);
    }

    @Test
    void an_engine_that_soon_gains_speed_after_a_shift_that_landed_low_is_not_lugged() throws IOException {
        pull(2.6, 0.87, 0.96);
        assertThat(found(EventKind.LUGGING)).isEmpty();

        pull(2.6, 0.87, 0.9);
        assertThat(found(EventKind.LUGGING)).as("it hardly gains").hasSize(1);

        pull(2.6, 0.6, 0.75);
        assertThat(found(EventKind.LUGGING)).as("far too low").hasSize(2);

        pull(3.8, 0.81, 0.96);
        assertThat(found(EventKind.LUGGING)).as("too long").hasSize(3);
    }

    private static String disc(double inputRpm) {
        StringBuilder text = new StringBuilder("time_s,engine_rpm,speed_kmh,clutch,input_shaft_rpm\n");
        for (int i = 0; i < 300; i++) {
            boolean down = i > 100 && i < 140;
            text.append(String.format(
                    Locale.ROOT,
                    "%.1f,%d,45,%d,%.0f%n",
                    i * STEP,
                    down ? 650 : 1200,
                    down ? 1 : 0,
                    down ? inputRpm : 1200));
        }
        return text.toString();
    }

    @Test
    void an_input_shaft_far_above_governed_speed_with_the_pedal_down_oversped_the_disc() throws IOException {
        Path fast = Files.writeString(folder.resolve("fast.csv"), disc(1.4 * table.governedRpm()));
        Path slow = Files.writeString(folder.resolve("slow.csv"), disc(1.1 * table.governedRpm()));

        assertThat(ReadTrip.read(TripRequest.of(fast, table), Progress.SILENT).events())
                .filteredOn(e -> e.kind() == EventKind.DISC_OVERSPEED)
                .singleElement()
                .satisfies(e -> assertThat(e.figures().get(EventFigure.GOVERNED_MULTIPLE))
                        .isEqualTo(1.4))
                .satisfies(e -> assertThat(e.sentence()).contains("by the input shaft"));
        assertThat(ReadTrip.read(TripRequest.of(slow, table), Progress.SILENT).events())
                .noneMatch(e -> e.kind() == EventKind.DISC_OVERSPEED);
    }
}
