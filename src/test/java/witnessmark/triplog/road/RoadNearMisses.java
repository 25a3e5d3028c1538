package witnessmark.triplog.road;

import java.util.List;
import java.util.function.Consumer;

/** Driving that comes close to a habit and is none. */
final class RoadNearMisses {
    private final RoadDriver d;
    private final RoadHabits habits;

    RoadNearMisses(RoadDriver driver) {
        this.d = driver;
        this.habits = new RoadHabits(driver);
    }

    List<Consumer<RoadNearMisses>> all() {
        return List.of(
                RoadNearMisses::plainLeg,
                RoadNearMisses::plainLeg,
                RoadNearMisses::plainLeg,
                RoadNearMisses::lowRangeBelowCeiling,
                RoadNearMisses::longNeutralBelowCeiling,
                RoadNearMisses::pedalHeldToRest,
                RoadNearMisses::shortNeutral,
                RoadNearMisses::sameRowPreselection,
                RoadNearMisses::longStart,
                RoadNearMisses::brakesHoldOnHill,
                RoadNearMisses::properReverse,
                RoadNearMisses::stall,
                RoadNearMisses::floatsWithClosedAccelerator,
                RoadNearMisses::creep);
    }

    void plainLeg() {
        d.start(d.low(1 + d.random.nextInt(d.tallestStart())));
        d.upTo(d.chance(0.5) ? d.top() : d.high(d.levers()));
        d.cruiseFor(d.uniform(15, 70));
        d.comeToRest();
    }

    void lowRangeBelowCeiling() {
        int low = d.low(d.levers());
        d.start(d.low(1));
        d.upTo(d.high(1));
        d.slowTo(d.uniform(0.75, 0.92) * d.kmhAt(low, d.table.governedRpm()));
        if (d.pedal < 10) {
            d.hold(1);
            d.shift(low);
        }
        d.comeToRest();
    }

    /** Range preselected below the ceiling, and a long while in neutral before the low gear is taken. */
    void longNeutralBelowCeiling() {
        int low = d.low(d.levers());
        d.start(d.low(1));
        d.upTo(d.high(1));
        d.grade = 0;
        d.slowTo(Math.min(d.uniform(0.7, 0.9) * d.kmhAt(low, d.table.governedRpm()), 19));
        if (d.pedal < 10) {
            d.hold(0.5);
            d.grade = -0.004;
            d.shift(low, RoadDriver.Feet.DOUBLE, d.uniform(4, 9), 0);
        }
        d.grade = Double.NaN;
        d.comeToRest();
    }

    /** No part of {@link #all}, so that drives of one seed stay what they were. */
    static void shorterGearAfterLongNeutral(RoadDriver d) {
        int tallest = d.low(d.levers());
        int shorter = d.low(d.levers() - 2);
        d.start(d.low(1));
        d.upTo(d.high(1));
        d.grade = 0;
        d.slowTo(0.9 * d.kmhAt(tallest, d.table.governedRpm()));
        d.pedalTo(0, 0.15);
        d.hold(0.5);
        d.grade = 0.03;
        d.throttle = 0;
        d.preselect(shorter, 0.6);
        d.pedalTo(80, 0.12);
        d.out();
        d.pedalTo(0, 0.1);
        while (d.kmh() > 0.7 * d.kmhAt(shorter, d.table.governedRpm())) {
            d.step();
        }
        d.shift(shorter);
        d.grade = 0;
        d.hold(3);
        d.comeToRest();
    }

    void pedalHeldToRest() {
        d.start(d.low(2));
        d.upTo(d.high(2));
        d.throttle = 0;
        d.pedalTo(80, 0.2);
        d.brakeForce = 0.45;
        while (d.speed > 0) {
            d.step();
        }
        d.stand(5);
    }

    void shortNeutral() {
        d.start(d.low(2));
        d.upTo(d.high(3));
        d.grade = 0;
        d.cruiseFor(3);
        int same = d.gear;
        d.throttle = 0;
        d.pedalTo(80, 0.1);
        d.out();
        d.pedalTo(0, 0.1);
        d.hold(d.uniform(1, 3));
        d.throttle = 0.5;
        for (double end = d.t + 2; d.rpm < d.lockedRpm(same) - 20 && d.t < end; ) {
            d.step();
        }
        d.throttle = 0;
        d.pedalTo(80, 0.1);
        d.into(same);
        d.pedalTo(0, 0.15);
        d.throttle = 0.3;
        d.hold(3);
        d.comeToRest();
    }

    /** The knob moves a moment before the lever leaves its gear: a log shows both in one row. */
    void sameRowPreselection() {
        d.start(d.low(2));
        d.upTo(d.low(d.levers()));
        d.grade = 0;
        d.pullTo(0.85 * d.table.governedRpm(), 0.8);
        int target = d.high(1);
        d.throttle = 0;
        d.pedalTo(80, 0.15);
        d.knob = 1;
        d.hold(d.uniform(0.01, 0.04));
        d.out();
        d.pedalTo(0, 0.15);
        for (double end = d.t + 2.2; d.rpm > d.lockedRpm(target) + 30 && d.t < end; ) {
            d.step();
        }
        d.pedalTo(80, 0.12);
        d.hold(0.1);
        d.into(target);
        d.pedalTo(0, 0.15);
        d.throttle = 0.4;
        d.hold(2.5);
        d.grade = Double.NaN;
        d.comeToRest();
    }

    void longStart() {
        d.grade = d.uniform(0.0, 0.012);
        d.start(d.low(1 + d.random.nextInt(2)), d.uniform(900, 1000), d.uniform(1.6, 2.2));
        d.grade = Double.NaN;
        d.upTo(d.high(1));
        d.comeToRest();
    }

    void brakesHoldOnHill() {
        d.grade = 0.03;
        d.brakeForce = 3;
        d.parked = false;
        d.pedalTo(90, 0.3);
        d.into(d.low(1));
        d.hold(d.uniform(6, 14));
        d.free(1000);
        d.hold(1);
        d.start(d.low(1));
        d.grade = Double.NaN;
        d.comeToRest();
    }

    void properReverse() {
        habits.back(false);
    }

    void stall() {
        d.grade = 0.02;
        d.brakeForce = 3;
        d.parked = false;
        d.pedalTo(85, 0.3);
        d.into(d.low(2));
        d.hold(0.8);
        d.throttle = 0;
        d.pedalTo(5, 0.2);
        d.ignition = false;
        d.hold(1.5);
        d.pedalTo(85, 0.3);
        d.hold(2);
        d.rpm = 420;
        d.ignition = true;
        d.hold(2);
        d.start(d.low(1));
        d.grade = Double.NaN;
        d.comeToRest();
    }

    /** Shifts without the clutch, accelerator closed: no log without a clutch signal tells them from others. */
    void floatsWithClosedAccelerator() {
        d.start(d.low(1));
        boolean before = d.floats;
        d.floats = true;
        d.upTo(d.high(2));
        d.floats = before;
        d.comeToRest();
    }

    /** Inches along in the lowest gear, pedal down and up again. */
    void creep() {
        d.grade = 0;
        for (int i = 0; i < 3; i++) {
            d.start(d.low(1), 820, 1.2);
            d.throttle = 0.1;
            d.hold(d.uniform(1, 3));
            d.pedalTo(85, 0.2);
            d.throttle = 0;
            d.brakeForce = 0.6;
            while (d.speed > 0.02) {
                d.step();
            }
            d.brakeForce = 2;
            d.hold(d.uniform(2, 5));
        }
        d.grade = Double.NaN;
        d.stand(3);
    }
}
