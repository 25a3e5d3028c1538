package witnessmark.triplog.road;

import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.signal.Signal;

/** The acts that wear a gearbox or a clutch, each in several ways. */
final class RoadHabits {
    private final RoadDriver d;

    RoadHabits(RoadDriver driver) {
        this.d = driver;
    }

    List<Consumer<RoadHabits>> all() {
        return List.of(
                RoadHabits::lowRangeTooFast,
                RoadHabits::lowRangeTooFast,
                RoadHabits::lowRangePedalHeld,
                RoadHabits::overdriveToLow,
                RoadHabits::overdriveToLow,
                RoadHabits::startInHighRange,
                RoadHabits::startInHighRange,
                RoadHabits::startTooHigh,
                RoadHabits::startTooHigh,
                RoadHabits::rollInNeutral,
                RoadHabits::runAway,
                RoadHabits::lug,
                RoadHabits::shiftsWithOnePress,
                RoadHabits::shiftsWithout,
                RoadHabits::rideInGear,
                RoadHabits::rideSlipping,
                RoadHabits::holdOnHill,
                RoadHabits::slip,
                RoadHabits::floorPedal,
                RoadHabits::rangeInNeutral,
                RoadHabits::rangeInNeutral,
                RoadHabits::rangeInReverse,
                RoadHabits::rangeInReverse,
                RoadHabits::hotOil,
                RoadHabits::dropClutch,
                RoadHabits::reverseTooEarly,
                RoadHabits::splitUnderTorque);
    }

    private void underWay(int gear) {
        d.start(d.low(1 + d.random.nextInt(2)));
        d.upTo(gear);
        if (d.gear != gear) {
            d.grade = 0;
            d.upTo(gear);
        }
    }

    private int lowTop() {
        return d.low(d.levers());
    }

    /** A high gear for a speed at which the low one would be too fast. */
    private void rollAt(double overTarget, int low, boolean overdrive) {
        int high = d.high(overdrive ? 1 : 1 + d.random.nextInt(2));
        underWay(high);
        d.grade = 0;
        double kmh = overTarget * d.kmhAt(low, d.table.governedRpm());
        while (d.kmhAt(d.gear, 0.95 * d.table.governedRpm()) < kmh && d.gear < d.top()) {
            d.pullTo(0.85 * d.table.governedRpm(), 0.9);
            d.shift(Math.min(d.top(), d.high(Math.min(d.levers(), d.gear(d.gear).lever() + 1))));
        }
        d.throttle = 0.8;
        for (double end = d.t + 40; d.kmh() < kmh && d.t < end; ) {
            d.step();
        }
        d.slowTo(kmh);
        d.pedalTo(0, 0.1);
        d.cruiseFor(d.uniform(1.5, 3));
    }

    void lowRangeTooFast() {
        int low = lowTop();
        rollAt(d.uniform(1.12, 1.4), low, false);
        if (d.over(low) < 1.08) {
            d.comeToRest();
            return;
        }
        double from = d.t;
        boolean overdrive = d.isOverdrive(d.gear);
        boolean slow = d.chance(0.35);
        RoadDriver.Feet feet = d.chance(0.5) ? RoadDriver.Feet.DOUBLE : RoadDriver.Feet.SINGLE;
        d.grade = slow ? -0.012 : 0;
        d.shift(low, feet, slow ? d.uniform(4.5, 14) : 0, 0);
        double over = d.over(low);
        d.truth(EventKind.LOW_RANGE_ABOVE_CEILING, from, over > 1.06 ? 2 : RoadDriver.NEVER, "over " + over);
        if (overdrive) {
            fromOverdrive(from, over);
        }
        d.hold(1);
        d.comeToRest();
    }

    /** The pedal stays down after the lever is in: the gear shows only when the truck has slowed down below the ceiling. */
    void lowRangePedalHeld() {
        int low = lowTop();
        rollAt(d.uniform(1.15, 1.3), low, false);
        if (d.over(low) < 1.1) {
            d.comeToRest();
            return;
        }
        double from = d.t;
        d.grade = 0.03;
        d.shift(low, RoadDriver.Feet.HELD, 0, d.uniform(1.5, 6));
        d.grade = 0;
        boolean shows = d.over(low) > 1.06;
        if (shows) {
            d.truth(EventKind.LOW_RANGE_ABOVE_CEILING, from, 2, "held");
        } else {
            d.truth(EventKind.LOW_RANGE_ABOVE_CEILING, from, 5, "held", Signal.RANGE_KNOB, Signal.LEVER);
        }
        d.hold(1);
        d.comeToRest();
    }

    void overdriveToLow() {
        int low = lowTop();
        int over = d.top();
        underWay(d.table.hasOverdriveSplit() ? d.find(KnobGear.Range.HIGH, 1, true) : d.high(d.levers() - 1));
        if (!d.isOverdrive(over) && !d.isOverdrive(d.gear)) {
            d.comeToRest();
            return;
        }
        if (!d.isOverdrive(d.gear)) {
            d.shift(over);
        }
        d.grade = 0;
        d.slowTo(d.uniform(0.7, 1.1) * d.kmhAt(low, d.table.governedRpm()));
        d.pedalTo(0, 0.15);
        d.throttle = 0.3;
        d.hold(2.5);
        double from = d.t;
        if (!d.isOverdrive(d.gear) || d.rpm < d.table.idleRpm() * 1.05) {
            d.comeToRest();
            return;
        }
        d.shift(low, RoadDriver.Feet.DOUBLE, d.chance(0.4) ? d.uniform(4, 14) : 0, 0);
        fromOverdrive(from, d.over(low));
        if (d.over(low) > 1) {
            d.truth(EventKind.LOW_RANGE_ABOVE_CEILING, from, RoadDriver.NEVER, "from overdrive");
        }
        d.hold(1);
        d.comeToRest();
    }

    /**
     * An act where the range synchronizer slips more than in the same shift from direct at the ceiling: (R - s)/(R - 1) times
     * as much with the splitter returning. What is near that may be told or not.
     */
    private void fromOverdrive(double from, double over) {
        double range = d.table.rangeStep();
        double split = d.table.hasOverdriveSplit() ? d.table.splitterRatio().orElse(1.0) : 1;
        double slip = over * (range - split) / (range - 1);
        if (slip > 0.97) {
            d.truth(EventKind.OVERDRIVE_TO_LOW, from, slip > 1.1 ? 2 : RoadDriver.NEVER, "slip " + slip);
        }
    }

    void startInHighRange() {
        d.grade = d.uniform(-0.01, 0.002);
        d.start(d.high(1 + d.random.nextInt(2)), d.uniform(950, 1200), d.uniform(0.6, 1.1));
        d.grade = Double.NaN;
        d.cruiseFor(d.uniform(2, 5));
        d.comeToRest();
    }

    void startTooHigh() {
        d.grade = d.uniform(-0.005, 0.005);
        d.start(d.low(Math.min(4, d.levers())), d.uniform(900, 1150), d.uniform(0.7, 1.1));
        d.grade = Double.NaN;
        d.pullTo(0.8 * d.table.governedRpm(), 0.8);
        d.shift(d.high(2));
        d.comeToRest();
    }

    void rollInNeutral() {
        underWay(d.high(d.levers()));
        d.cruiseFor(3);
        d.throttle = 0;
        d.pedalTo(80, 0.12);
        d.out();
        d.pedalTo(0, 0.15);
        d.grade = d.uniform(-0.03, -0.008);
        d.hold(d.uniform(10, 50));
        d.grade = 0;
        int back = d.fitting(d.table.lowestPullingRpm());
        if (back != RoadDrive.NEUTRAL && d.gear(back).range() == KnobGear.Range.HIGH) {
            takeBack(back);
        }
        d.comeToRest();
    }

    private void takeBack(int gear) {
        d.throttle = 0.5;
        for (double end = d.t + 2; d.rpm < d.lockedRpm(gear) - 20 && d.t < end; ) {
            d.step();
        }
        d.throttle = 0;
        d.pedalTo(80, 0.1);
        d.into(gear);
        d.pedalTo(0, 0.2);
        d.throttle = 0.3;
        d.hold(2);
    }

    void runAway() {
        underWay(d.high(2));
        d.grade = d.uniform(-0.08, -0.06);
        d.throttle = 0;
        double top = d.uniform(1.14, 1.28) * d.table.governedRpm();
        for (double end = d.t + 60; d.rpm < top && d.t < end; ) {
            d.step();
        }
        d.slowTo(d.kmhAt(d.gear, 0.85 * d.table.governedRpm()));
        d.grade = 0;
        d.comeToRest();
    }

    void lug() {
        underWay(d.high(3));
        d.slowTo(d.kmhAt(d.gear, d.uniform(0.8, 0.9) * d.table.lowestPullingRpm()));
        double weight = d.truck.massKg() * 9.81;
        d.throttle = 0.95;
        double force = d.truck.engineNm(d.rpm, 0.95)
                * d.truck.outputPerMetre()
                * d.gear(d.gear).ratio();
        d.grade = (force - d.truck.resistance(d.speed, 0)) / weight;
        d.hold(d.uniform(4, 9));
        d.grade = 0;
        d.pullTo(d.table.governedRpm() * 0.7, 0.6);
        d.comeToRest();
    }

    private void shifts(RoadDriver.Feet feet) {
        underWay(d.high(1));
        for (int i = 2; i <= d.levers() - 1; i++) {
            d.grade = 0;
            d.pullTo(0.85 * d.table.governedRpm(), 0.85);
            d.shift(d.high(i), feet, 0, 0);
            d.hold(d.uniform(1, 3));
        }
        d.comeToRest();
    }

    void shiftsWithOnePress() {
        shifts(RoadDriver.Feet.SINGLE);
    }

    void shiftsWithout() {
        shifts(RoadDriver.Feet.NONE);
    }

    void rideInGear() {
        underWay(d.high(d.levers() - 1));
        d.throttle = 0.35;
        double from = d.t;
        d.pedalTo(d.uniform(16, 19), 0.3);
        d.cruiseFor(d.uniform(6, 20));
        d.truth(EventKind.RIDING_CLUTCH, from, 1, "in gear", Signal.CLUTCH);
        d.pedalTo(0, 0.3);
        d.cruiseFor(3);
        d.comeToRest();
    }

    /** The foot so heavy that the clutch lets the engine run ahead. */
    void rideSlipping() {
        underWay(d.high(d.levers() - 1));
        d.grade = 0;
        double from = d.t;
        double ahead = d.uniform(1.05, 1.25);
        d.throttle = 0.6;
        d.pedalTo(26, 0.4);
        for (double end = d.t + d.uniform(6, 15); d.t < end; ) {
            double wish = ahead * d.lockedRpm(d.gear);
            d.pedal = Math.max(17, Math.min(48, d.pedal + (d.rpm < wish ? 9 : -9) * RoadDrive.DT));
            d.step();
        }
        d.truth(EventKind.RIDING_CLUTCH, from, 1, "slipping", Signal.CLUTCH, Signal.ACCELERATOR);
        d.throttle = 0.3;
        d.pedalTo(0, 0.8);
        d.cruiseFor(3);
        d.comeToRest();
    }

    void holdOnHill() {
        d.grade = d.uniform(0.015, 0.04);
        d.brakeForce = 3;
        d.parked = false;
        d.pedalTo(85, 0.3);
        d.into(d.low(1));
        d.hold(1);
        double from = d.t;
        d.pedalTo(45, 0.6);
        double wish = d.uniform(850, 1150);
        double seconds = d.uniform(6, 16);
        for (double end = d.t + seconds; d.t < end; ) {
            d.brakeForce = d.t < end - seconds + 0.8 ? 2 : 0;
            d.free(wish + 150);
            d.throttle = Math.max(0.1, d.throttle);
            d.pedal = Math.max(15, Math.min(62, d.pedal - (d.speed < 0.02 ? 30 : -40) * RoadDrive.DT));
            d.step();
        }
        d.truth(EventKind.RIDING_CLUTCH, from, 1, "holding", Signal.CLUTCH, Signal.ACCELERATOR);
        d.brakeForce = 2;
        d.pedalTo(85, 0.2);
        d.throttle = 0;
        d.hold(1.5);
        d.grade = Double.NaN;
        d.start(d.low(1));
        d.comeToRest();
    }

    void slip() {
        underWay(d.high(d.levers() - 1));
        int gear = d.gear;
        d.grade = 0;
        d.cruiseFor(3);
        double from = d.t;
        double share = d.uniform(0.07, 0.18);
        double slipped = 0;
        d.throttle = 0.85;
        for (double end = d.t + d.uniform(3, 7); d.t < end; ) {
            boolean less = d.rpm < d.lockedRpm(gear) / (1 - share);
            double carried = d.truck.engineNm(d.rpm, 0.85);
            d.clutchHealth = Math.max(0.05, (carried + (less ? -250 : 250)) / 4200);
            d.step();
            slipped += d.rpm > 1.055 * d.lockedRpm(gear) ? RoadDrive.DT : 0;
        }
        d.truth(
                EventKind.CLUTCH_SLIP,
                from,
                slipped > 2.5 ? 2 : RoadDriver.NEVER,
                "",
                Signal.CLUTCH,
                Signal.ACCELERATOR);
        d.clutchHealth = 1;
        d.throttle = 0.3;
        d.hold(4);
        d.comeToRest();
    }

    void floorPedal() {
        underWay(d.high(2));
        d.throttle = 0;
        d.pedalTo(100, 0.2);
        d.hold(d.uniform(0.5, 1.0));
        d.pedalTo(0, 0.3);
        d.throttle = 0.3;
        d.hold(2);
        d.comeToRest();
    }

    /** The knob is moved only when the lever stands in neutral, the truck rolling. */
    void rangeInNeutral() {
        int low = lowTop();
        boolean upwards = d.chance(0.4);
        underWay(upwards ? low : d.high(1));
        d.grade = 0;
        if (!upwards) {
            d.slowTo(d.uniform(0.7, 0.9) * d.kmhAt(low, d.table.governedRpm()));
            d.pedalTo(0, 0.15);
            d.hold(1.5);
        } else {
            d.pullTo(0.88 * d.table.governedRpm(), 0.9);
        }
        int target = upwards ? d.high(1) : low;
        d.throttle = 0;
        d.pedalTo(80, 0.12);
        d.hold(0.1);
        d.out();
        double before = d.chance(0.3) ? d.uniform(0.03, 0.1) : d.uniform(0.25, 1.2);
        d.hold(before);
        d.knob = upwards ? 1 : 0;
        double moved = d.t;
        double after = d.uniform(0.3, 0.9);
        d.pedalTo(0, 0.1);
        d.hold(after);
        d.throttle = 0.4;
        for (double end = d.t + 1.5; !upwards && d.rpm < d.lockedRpm(target) - 30 && d.t < end; ) {
            d.step();
        }
        d.throttle = 0;
        d.pedalTo(80, 0.1);
        d.into(target);
        d.pedalTo(0, 0.2);
        d.truths.add(new RoadTruth(
                EventKind.RANGE_MOVED_IN_NEUTRAL,
                moved - 0.3,
                moved + 0.3,
                Set.of(Signal.RANGE_KNOB, Signal.LEVER),
                5,
                before,
                ""));
        d.throttle = 0.3;
        d.hold(2);
        d.comeToRest();
    }

    void rangeInReverse() {
        back(true);
    }

    void back(boolean moveRange) {
        int reverse = reverse();
        d.grade = 0;
        d.start(reverse);
        d.pullTo(1.5 * d.table.idleRpm(), 0.3);
        d.throttle = 0.15;
        if (moveRange) {
            d.hold(0.8);
            double moved = d.t;
            d.knob = 1 - d.knob;
            d.truths.add(new RoadTruth(
                    EventKind.RANGE_MOVED_IN_REVERSE,
                    moved - 0.3,
                    moved + 0.3,
                    Set.of(Signal.RANGE_KNOB, Signal.CURRENT_GEAR),
                    5,
                    99,
                    ""));
        }
        d.hold(d.uniform(1, 3));
        backStop();
    }

    private int reverse() {
        for (int i = 0; i <= d.top(); i++) {
            if (d.gear(i).isReverse()) {
                return i;
            }
        }
        throw new IllegalStateException("no reverse");
    }

    private void backStop() {
        d.throttle = 0;
        d.pedalTo(80, 0.2);
        d.brakeForce = 0.8;
        while (Math.abs(d.speed) > 0) {
            d.step();
        }
        d.hold(1);
        d.stand(d.uniform(3, 6));
    }

    void hotOil() {
        underWay(d.top());
        d.oilTarget = d.uniform(150, 170);
        d.cruiseFor(150);
        d.oilTarget = 82;
        d.cruiseFor(60);
        d.comeToRest();
    }

    void dropClutch() {
        int gear = d.low(1);
        d.grade = 0;
        d.brakeForce = 0;
        d.parked = false;
        d.pedalTo(85, 0.3);
        d.into(gear);
        double high = d.uniform(1550, 1850);
        for (double end = d.t + 1.6; d.t < end; ) {
            d.throttle = Math.max(0, Math.min(0.6, (high + 80 - d.rpm) * 0.003));
            d.step();
        }
        double from = d.t;
        d.throttle = 0.1;
        double before = d.rpm;
        d.pedalTo(0, 0.1);
        d.hold(1);
        boolean fell = before - d.rpm > 550;
        d.truth(EventKind.CLUTCH_DROPPED, from, fell ? 5 : RoadDriver.NEVER, "", Signal.CLUTCH);
        d.throttle = 0.4;
        d.hold(2.5);
        d.grade = Double.NaN;
        d.comeToRest();
    }

    void reverseTooEarly() {
        d.start(d.low(1));
        d.pullTo(0.8 * d.table.governedRpm(), 0.7);
        d.shift(d.low(3));
        d.grade = 0;
        d.slowTo(d.uniform(6, 9));
        if (d.pedal < 50) {
            d.pedalTo(80, 0.15);
        }
        double from = d.t;
        d.out();
        d.hold(0.3);
        d.lever = -1;
        boolean rolls = d.kmh() > 4.5;
        d.hold(0.4);
        d.truth(EventKind.GEAR_AGAINST_ROLL, from, rolls ? 2 : RoadDriver.NEVER, "", Signal.CURRENT_GEAR, Signal.LEVER);
        d.brakeForce = 1.5;
        while (d.speed > 0) {
            d.step();
        }
        d.hold(0.5);
        d.stand(4);
    }

    void splitUnderTorque() {
        if (!d.table.hasOverdriveSplit()) {
            return;
        }
        int over = d.find(KnobGear.Range.HIGH, d.levers() - 1, true);
        underWay(d.high(d.levers() - 1));
        if (d.gear != d.high(d.levers() - 1)) {
            // On a hill that gear was not reached; another lever position would come with the split.
            d.comeToRest();
            return;
        }
        d.throttle = 0.6;
        d.hold(2.5);
        double from = d.t;
        d.gear = over;
        d.hold(3);
        d.truth(EventKind.SPLIT_UNDER_TORQUE, from, 5, "", Signal.CLUTCH, Signal.ACCELERATOR);
        d.cruiseFor(2);
        d.comeToRest();
    }
}
