package witnessmark.triplog.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.signal.Signal;

/** Drives the truck as a driver does who knows his trade: starts, shifts, cruises and stops, with small errors. */
class RoadDriver extends RoadDrive {
    /** How the clutch is used in a lever shift. */
    enum Feet {
        DOUBLE,
        SINGLE,
        NONE,
        /** Down before the lever leaves and held for long after it is in. */
        HELD
    }

    /** Nobody could see it, yet whoever reports it is right. */
    static final double NEVER = 1e9;

    final List<RoadTruth> truths = new ArrayList<>();
    final GearTable table;
    /** Whether lever shifts use the clutch twice; else not at all, which no log without a clutch signal shows. */
    boolean floats;

    RoadDriver(RoadTruck truck, long seed) {
        super(truck, seed);
        this.table = truck.table();
    }

    void truth(EventKind kind, double from, double hertz, String what, Signal... needs) {
        truths.add(new RoadTruth(kind, from, t, Set.of(needs), hertz, 99, what));
    }

    int find(KnobGear.Range range, int leverPosition, boolean over) {
        return IntStream.range(0, table.gears().size())
                .filter(i -> gear(i).range() == range
                        && gear(i).lever() == leverPosition
                        && (gear(i).splitter() == KnobGear.Splitter.OVERDRIVE) == over)
                .findFirst()
                .orElseThrow();
    }

    int levers() {
        return table.gears().stream().mapToInt(KnobGear::lever).max().orElseThrow();
    }

    int low(int leverPosition) {
        return find(KnobGear.Range.LOW, leverPosition, false);
    }

    int high(int leverPosition) {
        return find(KnobGear.Range.HIGH, leverPosition, false);
    }

    int top() {
        return table.gears().size() - 1;
    }

    private int knobOf(int index) {
        return gear(index).range() == KnobGear.Range.HIGH ? 1 : 0;
    }

    void into(int index) {
        gear = index;
        lever = gear(index).lever();
    }

    void out() {
        gear = NEUTRAL;
        lever = 0;
    }

    /** Stands in neutral on the brake, engine idling. */
    void stand(double seconds) {
        out();
        throttle = 0;
        brakeForce = 3;
        parked = seconds > 15;
        pedalTo(0, 0.2);
        knob = 0;
        hold(seconds);
    }

    /** Starts from rest; the clutch slips for two or three seconds until the wheels have caught up. */
    void start(int index) {
        start(index, uniform(880, 1080), uniform(0.8, 1.2));
    }

    void start(int index, double slipRpm, double gentle) {
        double from = t;
        throttle = 0;
        parked = false;
        brakeForce = 3;
        knob = knobOf(index);
        pedalTo(85, 0.35);
        into(index);
        hold(uniform(0.4, 1.2));
        brakeForce = Double.isNaN(grade) ? 0 : 2;
        double place = 58;
        double begin = t;
        pedalTo(place, 0.3);
        while (!locked && t < begin + 14) {
            boolean carries = place < 45;
            brakeForce = carries ? 0 : brakeForce;
            free(slipRpm + (carries ? 200 : 60));
            throttle = Math.max(throttle, carries ? 0.25 : 0.1);
            boolean sinking = rpm < slipRpm - 170;
            place = Math.max(4, Math.min(60, place + (sinking ? 30 : rpm > slipRpm - 60 ? -14 / gentle : -2) * DT));
            pedal = place;
            step();
        }
        boolean slow = t - begin > 8;
        brakeForce = 0;
        pedalTo(0, 0.4);
        throttle = 0.45;
        hold(uniform(1.5, 2.5));
        label(index, from, slow);
    }

    /** What took longer than a clutch should is told from shifts only by the clutch signal. */
    private void label(int index, double from, boolean slow) {
        Signal[] needs = slow ? new Signal[] {Signal.CLUTCH} : new Signal[0];
        if (gear(index).range() == KnobGear.Range.HIGH) {
            truth(EventKind.START_IN_HIGH_RANGE, from, 1, gear(index).name(), needs);
        } else if (gear(index).lever() > tallestStart()) {
            truth(EventKind.START_GEAR_TOO_HIGH, from, 1, gear(index).name(), needs);
        }
    }

    /** The third main-box gear of low range, a crawler counted: as tall as an empty truck starts. */
    int tallestStart() {
        return table.gears().stream().anyMatch(g -> g.lever() == 0) ? 2 : 3;
    }

    /** Pulls until the engine turns so fast, or gives up on a hill. */
    void pullTo(double targetRpm, double pedalShare) {
        throttle = pedalShare;
        double end = t + 22;
        while (rpm < targetRpm && t < end) {
            step();
        }
    }

    void cruiseFor(double seconds) {
        double target = kmh();
        for (double end = t + seconds; t < end; ) {
            cruise(target);
            step();
            if (rpm < table.lowestPullingRpm() * 1.02) {
                throttle = Math.min(throttle, 0.5);
            }
        }
        brakeForce = 0;
    }

    private void brakeInGear(double targetKmh, double force) {
        throttle = 0;
        brakeForce = force;
        while (kmh() > targetKmh && speed > 0) {
            if (gear != NEUTRAL && rpm < table.idleRpm() * 1.08 && pedal < 50) {
                pedalTo(80, 0.2);
            }
            step();
        }
        brakeForce = 0;
    }

    void slowTo(double targetKmh) {
        brakeInGear(targetKmh, uniform(0.6, 1.1));
    }

    void stop() {
        brakeInGear(0, uniform(0.7, 1.2));
        brakeForce = 2;
        hold(uniform(0.3, 0.8));
        double wait = uniform(3, 12);
        grade = Double.NaN;
        stand(wait);
    }

    /** The engine brought near a speed, lever in neutral, pedal where it is. */
    private void match(double targetRpm, double patience) {
        double error = uniform(-35, 35);
        double end = t + patience;
        while (t < end && Math.abs(rpm - targetRpm - error) > 25) {
            throttle = rpm < targetRpm + error ? 0.45 : 0;
            step();
        }
        throttle = 0;
    }

    void shift(int index) {
        shift(index, floats && gear(index).range() == gear(gear).range() ? Feet.NONE : Feet.DOUBLE, 0, 0);
    }

    /**
     * A lever shift; the range, if it changes, is preselected in gear.
     *
     * @param neutralSeconds how much longer than needed the lever stays in neutral
     * @param heldSeconds how long the pedal stays down after the lever is in, for {@link Feet#HELD}
     */
    void shift(int index, Feet feet, double neutralSeconds, double heldSeconds) {
        if (isSplitOnly(index)) {
            split(index);
            return;
        }
        preselect(index, uniform(0.35, 1.2));
        double from = t;
        ease();
        boolean clutch = feet != Feet.NONE;
        if (clutch) {
            pedalTo(80, 0.12);
            hold(uniform(0.08, 0.15));
        }
        out();
        hold(0.08);
        if (feet == Feet.DOUBLE) {
            pedalTo(0, 0.1);
            hold(0.05);
        }
        throttle = 0;
        hold(neutralSeconds);
        match(Math.min(lockedRpm(index), table.governedRpm() * 1.02), 2.2);
        if (feet == Feet.DOUBLE) {
            hold(uniform(0.12, 0.3));
            pedalTo(80, 0.1);
            hold(uniform(0.1, 0.2));
        }
        double taken = lockedRpm(index);
        into(index);
        hold(0.05);
        if (feet == Feet.HELD) {
            hold(heldSeconds);
        }
        if (clutch) {
            pedalTo(0, feet == Feet.HELD || taken > table.governedRpm() ? 0.35 : 0.12);
        }
        if (feet == Feet.HELD) {
            truth(
                    EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH,
                    from,
                    NEVER,
                    gear(index).name(),
                    Signal.CLUTCH);
        }
        if (feet == Feet.SINGLE || feet == Feet.NONE) {
            truth(
                    feet == Feet.SINGLE ? EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH : EventKind.SHIFT_WITHOUT_CLUTCH,
                    from,
                    8,
                    gear(index).name(),
                    Signal.CLUTCH);
        }
        throttle = 0.3;
        hold(uniform(1.2, 2.2));
    }

    /** Takes the torque off before a shift. */
    private void ease() {
        double first = throttle;
        for (double s = 0; s < 0.2; s += DT) {
            throttle = first * (1 - s / 0.2);
            step();
        }
        throttle = 0;
    }

    void preselect(int index, double seconds) {
        if (knob != knobOf(index)) {
            knob = knobOf(index);
            hold(seconds);
        }
    }

    private boolean isSplitOnly(int index) {
        return gear != NEUTRAL
                && gear(index).lever() == gear(gear).lever()
                && gear(index).range() == gear(gear).range();
    }

    /** A split with the foot off the accelerator for a moment. */
    private void split(int index) {
        ease();
        pedalTo(70, 0.12);
        hold(0.15);
        gear = index;
        match(lockedRpm(index), 0.8);
        pedalTo(0, 0.15);
        throttle = 0.35;
        hold(uniform(1, 2));
    }

    /** Shifts up from gear to gear until the last, leaving some out. */
    void upTo(int last) {
        while (gear != last) {
            int next = next(last);
            double shiftRpm = table.governedRpm() * uniform(0.72, 0.92);
            pullTo(shiftRpm, uniform(0.55, 1.0));
            if (lockedRpm(next) < table.lowestPullingRpm() * 0.85) {
                return;
            }
            shift(next);
        }
    }

    private int next(int last) {
        double here = gear(gear).ratio();
        for (int i = 0; i < last; i++) {
            KnobGear g = gear(i);
            boolean whole = g.splitter() != KnobGear.Splitter.OVERDRIVE && !g.isReverse();
            if (whole && here / g.ratio() > (chance(0.25) ? 1.6 : 1.15)) {
                return i;
            }
        }
        return last;
    }

    /** The tallest gear that pulls at this speed and at least so many rpm. */
    int fitting(double leastRpm) {
        for (int i = top(); i >= 0; i--) {
            if (!gear(i).isReverse()
                    && gear(i).splitter() != KnobGear.Splitter.OVERDRIVE
                    && lockedRpm(i) > leastRpm
                    && lockedRpm(i) < 0.93 * table.governedRpm()) {
                return i;
            }
        }
        return NEUTRAL;
    }

    /** Slows down by one or two proper shifts, then stops; at times the lever is in neutral for the last metres. */
    void comeToRest() {
        if (gear != NEUTRAL && chance(0.6)) {
            slowTo(kmhAt(gear, table.lowestPullingRpm() * 0.95));
            int down = fitting(table.governedRpm() * 0.62);
            boolean proper = down != NEUTRAL
                    && down < gear
                    && kmh() < 0.9 * kmhAt(down, table.governedRpm())
                    && kmh() > 9
                    && !(isOverdrive(gear) && gear(down).range() == KnobGear.Range.LOW);
            if (proper && pedal < 10) {
                shift(down);
                hold(uniform(0.5, 2));
            }
        }
        if (gear != NEUTRAL && chance(0.3)) {
            slowTo(Math.min(kmh(), uniform(8, 17)));
            out();
            pedalTo(0, 0.2);
        }
        stop();
    }

    boolean isOverdrive(int index) {
        return gear(index).splitter() == KnobGear.Splitter.OVERDRIVE
                || gear(index).ratio() < 1;
    }

    /** How far above its ceiling this gear would be. */
    double over(int index) {
        return lockedRpm(index) / table.governedRpm();
    }
}
