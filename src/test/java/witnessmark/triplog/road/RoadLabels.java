package witnessmark.triplog.road;

import java.util.List;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Predicate;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.signal.Signal;

/** Labels what follows from the physics of a drive alone, whatever the driver meant to do. */
final class RoadLabels {
    private final RoadDriver drive;
    private final GearTable table;
    private final List<RoadState> states;

    private RoadLabels(RoadDriver drive) {
        this.drive = drive;
        this.table = drive.table;
        this.states = drive.states;
    }

    static void add(RoadDriver drive) {
        new RoadLabels(drive).add();
    }

    private void add() {
        double governed = table.governedRpm();
        spells(s -> s.rpm() > 1.06 * governed, 0.3, (from, to) -> {
            boolean clear = holds(from, to, s -> s.rpm() > 1.12 * governed, 0.7);
            label(EventKind.ENGINE_OVERSPEED, from, to, clear ? 2 : RoadDriver.NEVER);
        });
        spells(s -> s.lever() == 0 && s.kmh() > 18, 4, (from, to) -> {
            boolean clear = holds(
                    from,
                    to,
                    s -> s.kmh() > 23 && s.lever() == 0 && s.pedal() < 5 && s.rpm() < 1.2 * table.idleRpm(),
                    9);
            label(EventKind.COAST_IN_NEUTRAL, from, to, clear ? 0.5 : RoadDriver.NEVER);
        });
        double pulling = table.lowestPullingRpm();
        spells(s -> s.rpm() < 0.99 * pulling && s.throttle() > 65 && s.pedal() < 10 && s.kmh() > 6, 1, (from, to) -> {
            boolean clear = holds(
                    from, to, s -> s.rpm() < 0.93 * pulling && s.throttle() > 75 && s.pedal() < 5 && s.kmh() > 12, 3);
            label(EventKind.LUGGING, from, to, clear ? 0.5 : RoadDriver.NEVER, Signal.ACCELERATOR);
        });
        spells(s -> s.pedal() >= 93 && s.kmh() > 2, 0.05, (from, to) -> {
            boolean clear = holds(from, to, s -> s.pedal() >= 97 && s.kmh() > 5, 0.5);
            label(EventKind.CLUTCH_FLOORED_ROLLING, from, to, clear ? 4 : RoadDriver.NEVER, Signal.CLUTCH_PEDAL);
        });
        spells(
                s -> s.oil() > 118,
                20,
                (from, to) -> label(
                        EventKind.HOT_OIL,
                        from,
                        to,
                        holds(from, to, s -> s.oil() > 122, 75) ? 0.05 : RoadDriver.NEVER,
                        Signal.GEARBOX_OIL));
    }

    private void label(EventKind kind, double from, double to, double hertz, Signal... needs) {
        drive.truths.add(new RoadTruth(kind, from, to, Set.of(needs), hertz, 99, "by physics"));
    }

    private boolean holds(double from, double to, Predicate<RoadState> test, double seconds) {
        boolean[] found = new boolean[1];
        runs(test, from, to, (begin, end) -> found[0] |= end - begin >= seconds);
        return found[0];
    }

    private void spells(Predicate<RoadState> test, double seconds, BiConsumer<Double, Double> each) {
        runs(test, 0, Double.MAX_VALUE, (begin, end) -> {
            if (end - begin >= seconds) {
                each.accept(begin, end);
            }
        });
    }

    private void runs(Predicate<RoadState> test, double from, double to, BiConsumer<Double, Double> each) {
        double begin = -1;
        double last = 0;
        for (RoadState s : states) {
            boolean inside = s.t() >= from && s.t() <= to && test.test(s);
            if (inside && begin < 0) {
                begin = s.t();
            }
            if (!inside && begin >= 0) {
                each.accept(begin, last);
                begin = -1;
            }
            last = s.t();
        }
        if (begin >= 0) {
            each.accept(begin, last);
        }
    }
}
