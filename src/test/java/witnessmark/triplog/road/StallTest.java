package witnessmark.triplog.road;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.evidence.LogEvidence;
import witnessmark.triplog.evidence.WeighRecord;
import witnessmark.triplog.signal.Signal;

/** An engine that stalls, as engines do, against the truth of a drive by physics; how they stall is common practice, no source. */
class StallTest {
    private static final Map<String, Consumer<RoadDriver>> STALLS = Map.of(
            "at a start in a gear for it", d -> stallAtStart(d, d.low(2)),
            "at a start in a gear too tall", d -> stallAtStart(d, d.low(d.levers())),
            "braked to rest in gear", StallTest::stallBraking,
            "died under way in gear", d -> dieUnderWay(d, 0),
            "died under way, pedal down at once", d -> dieUnderWay(d, 85));

    @TempDir
    private Path folder;

    static Stream<String> stalls() {
        return STALLS.keySet().stream().sorted();
    }

    @ParameterizedTest
    @MethodSource("stalls")
    void an_engine_that_stalls_is_no_act_of_the_driver(String stall) {
        blamesNobody(stall, List.of(Optional.empty(), Optional.of(Signal.CLUTCH)));
    }

    @ParameterizedTest
    @MethodSource("stalls")
    @Tag("long")
    void an_engine_that_stalls_is_no_act_of_the_driver_whichever_signal_is_left_out(String stall) {
        blamesNobody(stall, each(drive(stall)));
    }

    private void blamesNobody(String stall, List<Optional<Signal>> leftOut) {
        RoadDriver drive = drive(stall);
        for (double hertz : RoadLog.RATES) {
            for (Optional<Signal> missing : leftOut) {
                TripResult trip = read(drive, hertz, missing);

                assertThat(trip.events().stream().filter(e -> !isTrue(e)))
                        .as("%s, %s rows a second without %s", stall, hertz, missing)
                        .isEmpty();
                assertThat(WeighRecord.weigh(trip.record()).stream()
                                .filter(e -> e.speaksFor() && e.count() > 0)
                                .filter(e -> !e.finding().equals("log-shift-gaps-very-short"))
                                .map(LogEvidence::finding))
                        .as("%s, %s rows a second without %s", stall, hertz, missing)
                        .isEmpty();
            }
        }
    }

    @Test
    void an_engine_that_dies_under_way_is_seen_to_stand_while_the_wheels_turn() {
        RoadDriver drive = drive("died under way, pedal down at once");

        assertThat(read(drive, 10, Optional.empty()).events())
                .extracting(HabitEvent::kind)
                .contains(EventKind.ROLLING_ENGINE_STOPPED);
    }

    /** An engine that stands while the truck rolls is one that rolls without it, whoever's doing that is. */
    private static boolean isTrue(HabitEvent event) {
        return event.kind() == EventKind.ROLLING_ENGINE_STOPPED || event.kind() == EventKind.SHIFT_WITHOUT_CLUTCH;
    }

    private static List<Optional<Signal>> each(RoadDriver drive) {
        RoadLog log = new RoadLog(drive, 1, 10, RoadLog.Style.SNAKE, false);
        log.giveAll();
        Stream<Optional<Signal>> signals = log.given.stream()
                .filter(s -> s != Signal.ENGINE_SPEED && s != Signal.ROAD_SPEED)
                .map(Optional::of);
        return signals.toList();
    }

    private TripResult read(RoadDriver drive, double hertz, Optional<Signal> missing) {
        RoadLog log = new RoadLog(drive, 7, hertz, RoadLog.Style.SNAKE, false);
        log.giveAll();
        missing.ifPresent(log::leaveOut);
        Path file = folder.resolve("stall.csv");
        log.write(file);
        return RoadReport.read(file, drive, log.byHand());
    }

    private static RoadDriver drive(String stall) {
        RoadDriver d = RoadTrip.plain(60_001);
        d.stand(8);
        for (int i = 0; i < 4; i++) {
            new RoadNearMisses(d).plainLeg();
            STALLS.get(stall).accept(d);
        }
        return d;
    }

    /** The clutch is let in without accelerator: the engine is pulled down and dies with a lurch. */
    private static void stallAtStart(RoadDriver d, int gear) {
        d.grade = 0.02;
        d.brakeForce = 0.3;
        d.parked = false;
        d.throttle = 0;
        d.pedalTo(85, 0.3);
        d.into(gear);
        d.hold(0.8);
        d.pedalTo(5, 0.4);
        d.ignition = false;
        d.hold(1.2);
        d.brakeForce = 3;
        d.pedalTo(85, 0.3);
        d.out();
        crank(d);
        d.grade = Double.NaN;
    }

    /** The pedal is forgotten while the truck is braked to rest. */
    private static void stallBraking(RoadDriver d) {
        d.start(d.low(1));
        d.upTo(d.low(d.levers()));
        d.throttle = 0;
        d.brakeForce = 1.5;
        while (d.kmh() > 0) {
            d.ignition = d.rpm > 380;
            d.step();
        }
        d.rpm = 0;
        d.hold(1);
        d.brakeForce = 3;
        d.pedalTo(85, 0.3);
        d.out();
        crank(d);
    }

    /** No fuel comes: the wheels turn the engine until the pedal goes down, and the truck rolls out. */
    private static void dieUnderWay(RoadDriver d, double pedal) {
        d.start(d.low(1));
        d.upTo(d.high(2));
        d.grade = 0;
        d.ignition = false;
        d.throttle = 0;
        d.pedalTo(pedal, 0.3);
        d.hold(4);
        d.pedalTo(85, 0.3);
        d.out();
        d.pedalTo(0, 0.3);
        for (double end = d.t + 14; d.t < end && d.kmh() > 5; ) {
            d.step();
        }
        d.brakeForce = 1;
        while (d.kmh() > 0) {
            d.step();
        }
        d.brakeForce = 3;
        crank(d);
        d.grade = Double.NaN;
    }

    private static void crank(RoadDriver d) {
        d.rpm = 0;
        d.hold(2);
        d.rpm = 180;
        for (int i = 0; i < 15; i++) {
            d.hold(0.1);
            d.rpm = 180;
        }
        d.rpm = 420;
        d.ignition = true;
        d.pedalTo(0, 0.3);
        d.hold(4);
    }
}
