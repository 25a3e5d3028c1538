package witnessmark.triplog.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import witnessmark.triplog.gear.KnobGear;

/** The truck on its road, in steps of a hundredth of a second, and the pedals and levers to move it with. */
class RoadDrive {
    static final double DT = 0.01;
    /** A state is kept each so many steps. */
    private static final int KEPT = 5;

    private static final double SOLID_NM = 60_000;
    private static final double CLUTCH_NM = 4200;
    static final int NEUTRAL = -1;

    final RoadTruck truck;
    final Random random;
    final List<RoadState> states = new ArrayList<>();

    double t;
    double speed;
    double rpm;
    double metres;
    double oil = 78;
    double oilTarget = 82;
    double clutchHealth = 1;

    double throttle;
    double brakeForce;
    double pedal;
    int gear = NEUTRAL;
    int lever;
    int knob;
    boolean parked;
    boolean ignition = true;
    boolean locked;
    double grade = Double.NaN;
    private double inputRpm;
    private int steps;
    private final double hills;
    private final double phase;

    RoadDrive(RoadTruck truck, long seed) {
        this.truck = truck;
        this.random = new Random(seed);
        this.rpm = truck.table().idleRpm();
        this.hills = uniform(0.0, 0.02);
        this.phase = uniform(0, 6);
    }

    double uniform(double low, double high) {
        return low + random.nextDouble() * (high - low);
    }

    boolean chance(double share) {
        return random.nextDouble() < share;
    }

    double kmh() {
        return Math.abs(speed) * 3.6;
    }

    KnobGear gear(int index) {
        return truck.table().gear(index);
    }

    private double gradeNow() {
        return Double.isNaN(grade) ? hills * Math.sin(metres / 700 + phase) : grade;
    }

    /** Engine speed at which this gear turns with the wheels. */
    double lockedRpm(int index) {
        return Math.abs(speed) * truck.outputPerMetre() * gear(index).ratio() * 30 / Math.PI;
    }

    double kmhAt(int index, double engineRpm) {
        return engineRpm * Math.PI / 30 / (truck.outputPerMetre() * gear(index).ratio()) * 3.6;
    }

    /** Torque that the clutch can carry with the pedal where it is. */
    private double capacity() {
        double free = Math.max(0, Math.min(1, (62 - pedal) / 52));
        return CLUTCH_NM * clutchHealth * free * free;
    }

    void step() {
        boolean reverse = gear != NEUTRAL && gear(gear).isReverse();
        double k = gear == NEUTRAL ? 0 : truck.outputPerMetre() * gear(gear).ratio();
        double way = reverse ? -1 : 1;
        double engine = ignition ? truck.engineNm(rpm, throttle) : -truck.dragNm(rpm) * 3;
        double against = resisting();
        double limit = gear == NEUTRAL ? 0 : pedal < 3 && clutchHealth >= 1 ? SOLID_NM : capacity();
        double wheelRpm = k * way * speed * 30 / Math.PI;
        boolean same = gear != NEUTRAL && limit > 0 && Math.abs(rpm - wheelRpm) < 6;
        double j = RoadTruck.ENGINE_INERTIA;
        if (same) {
            double mass = truck.massKg() + j * k * k;
            double acceleration = (way * engine * k - against) / mass;
            double carried = engine - j * k * way * acceleration;
            if (Math.abs(carried) <= limit) {
                move(acceleration);
                rpm = Math.max(0, k * way * speed * 30 / Math.PI);
                locked = true;
                end();
                return;
            }
        }
        locked = false;
        double grip = gear == NEUTRAL ? 0 : Math.signum(rpm - wheelRpm) * limit;
        // The driveline is no rod: what the clutch passes on at one blow is bounded by what it winds up.
        grip = Math.max(-6500, Math.min(6500, grip));
        double before = rpm - wheelRpm;
        rpm = Math.max(0, rpm + (engine - grip) / j * DT * 30 / Math.PI);
        move((way * grip * k - against) / truck.massKg());
        double after = rpm - k * way * speed * 30 / Math.PI;
        if (gear != NEUTRAL && limit > 0 && before * after < 0) {
            rpm = Math.max(0, k * way * speed * 30 / Math.PI);
        }
        end();
    }

    private double resisting() {
        double sign = Math.signum(speed);
        return sign * (truck.resistance(Math.abs(speed), 0)) + truck.massKg() * 9.81 * gradeNow();
    }

    private void move(double acceleration) {
        double braking = brakeForce + (parked ? 6 : 0);
        double free = speed + acceleration * DT;
        if (braking > 0) {
            double taken = braking * DT;
            speed = Math.abs(free) <= taken ? 0 : free - Math.signum(free) * taken;
        } else if (Math.abs(speed) < 0.02 && Math.abs(acceleration) < 0.06) {
            speed = 0;
        } else {
            speed = free;
        }
        metres += Math.abs(speed) * DT;
    }

    private void end() {
        t += DT;
        oil += (oilTarget - oil) * DT / 60;
        inputRpm = gear == NEUTRAL ? inputRpm + (0.8 * rpm - inputRpm) * DT / 0.4 : lockedRpm(gear);
        if (steps++ % KEPT == 0) {
            double torque = ignition ? 100 * (truck.engineNm(rpm, throttle) + truck.dragNm(rpm)) / truck.peakNm() : 0;
            states.add(new RoadState(
                    t,
                    rpm,
                    kmh(),
                    inputRpm,
                    pedal,
                    100 * throttle,
                    Math.max(0, Math.min(105, torque)),
                    lever,
                    knob,
                    brakeForce > 0,
                    parked,
                    oil));
        }
    }

    void hold(double seconds) {
        for (double end = t + seconds; t < end; ) {
            step();
        }
    }

    /** Moves the pedal to a place within so many seconds. */
    void pedalTo(double place, double seconds) {
        double from = pedal;
        double begin = t;
        while (t < begin + seconds) {
            pedal = from + (place - from) * (t - begin) / seconds;
            step();
        }
        pedal = place;
    }

    /** Throttle that holds the free engine about this speed. */
    void free(double targetRpm) {
        throttle = Math.max(0, Math.min(1, 0.12 + (targetRpm - rpm) * 0.002));
    }

    /** Throttle that holds the truck about this speed. */
    void cruise(double targetKmh) {
        throttle = Math.max(0, Math.min(1, throttle + ((targetKmh - kmh()) * 0.02 - (throttle - 0.3) * 0.2) * DT));
        brakeForce = kmh() > targetKmh + 4 ? 0.4 : kmh() > targetKmh + 1 ? brakeForce : 0;
    }
}
