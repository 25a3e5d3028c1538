package witnessmark.gearbox.start;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/**
 * Works a start out: engine speed and clutch torque held until the clutch closes, losses left out. Energy of a clutch
 * at launch: machine design textbooks, from memory. Full torque makes the least heat; with half of what the torque is over
 * the load the slip takes twice as long, and that is taken for the upper end (judgement: less gets hardly any truck away).
 */
public record AnalyseStart(TruckProfile truck) {

    /** Metres per second squared, rounded as handbooks do. */
    static final double GRAVITY = 9.81;

    private static final String RADIUS = "r = 1000 / (2 pi N_km)";
    private static final String TRUCK_INERTIA = "J_v = m r^2 / (i_gear i_axle)^2, w = 2 pi n_start / 60, " + RADIUS;

    public StandingStart of(StartQuestion question) {
        Gear gear = question.gear();
        double overall = gear.ratio() * truck.value(Parameter.AXLE_RATIO);
        double wheelTorque =
                question.massKg() * GRAVITY * resistance(question.gradePercent()) * truck.wheelRadiusMetres();
        double clutchTorque = clutchTorque();
        Launch launch = launch(question, overall, clutchTorque, wheelTorque / overall);
        StandingStart.Mainshaft mainshaft = mainshaft(gear, wheelTorque);
        StandingStart.Reach reach = reach(question.massKg(), overall, clutchTorque);
        return new StandingStart(
                question,
                Figure.computed(
                        wheelTorque,
                        Unit.NEWTON_METRE,
                        "T_wheel = m g (sin(a) + f cos(a)) r where a = atan(grade / 100), " + RADIUS),
                Figure.computed(wheelTorque / overall, Unit.NEWTON_METRE, "T_load = T_wheel / (i_gear i_axle)"),
                Figure.computed(clutchTorque, Unit.NEWTON_METRE, "T_c = min(clutch_capacity, engine_torque)"),
                reach,
                mainshaft,
                launch,
                verdict(question, reach, launch, mainshaft, wheelTorque / overall));
    }

    /** Pull over weight that a grade and the rolling of the tyres ask. */
    private double resistance(double gradePercent) {
        double angle = Math.atan(gradePercent / 100);
        return Math.sin(angle) + truck.value(Parameter.ROLLING_RESISTANCE) * Math.cos(angle);
    }

    private double clutchTorque() {
        return Math.min(truck.value(Parameter.CLUTCH_CAPACITY), truck.torque().atRpm(truck.value(Parameter.START_RPM)));
    }

    private StandingStart.Reach reach(double massKg, double overall, double clutchTorque) {
        double byTorque = steepestByTorque(massKg, overall, clutchTorque);
        double friction = truck.value(Parameter.ROLLING_RESISTANCE);
        double byGrip = 100 * (truck.value(Parameter.GRIP) * truck.value(Parameter.DRIVE_SHARE) - friction);
        return new StandingStart.Reach(
                Figure.computed(
                        byTorque,
                        Unit.PERCENT,
                        "p_torque = 100 tan(min(80, asin(min(1, pull / sqrt(1 + f^2))) - atan(f)))"
                                + " where pull = T_c i_gear i_axle / (m g r), " + RADIUS),
                Figure.computed(byGrip, Unit.PERCENT, "p_grip = 100 (grip share - f); beyond it the drive wheels spin"),
                Figure.computed(Math.min(byTorque, byGrip), Unit.PERCENT, "min(p_torque, p_grip)"));
    }

    private double steepestByTorque(double massKg, double overall, double clutchTorque) {
        double friction = truck.value(Parameter.ROLLING_RESISTANCE);
        double pull = clutchTorque * overall / (massKg * GRAVITY * truck.wheelRadiusMetres());
        // Pull beyond the weight climbs anything; the sine then has no angle.
        double sine = Math.min(1, pull / Math.sqrt(1 + friction * friction));
        double angle = Math.asin(sine) - Math.atan(friction);
        return 100 * Math.tan(Math.min(angle, Math.toRadians(80)));
    }

    private StandingStart.Mainshaft mainshaft(Gear gear, double wheelTorque) {
        double diameter = truck.value(Parameter.MAINSHAFT_DIAMETER);
        double needed = wheelTorque / (truck.value(Parameter.AXLE_RATIO) * gear.auxiliaryRatio());
        double ceiling =
                truck.value(Parameter.CLUTCH_CAPACITY) * gear.lever().ratio() * truck.value(Parameter.SHOCK_FACTOR);
        Figure neededStress = stress(needed, diameter, "T_main");
        Figure ceilingStress = stress(ceiling, diameter, "T_most");
        Figure yield = ShaftTorsion.shearYield(truck.value(Parameter.YIELD));
        return new StandingStart.Mainshaft(
                Figure.computed(needed, Unit.NEWTON_METRE, "T_main = T_wheel / (i_axle i_auxiliary)"),
                neededStress,
                Figure.computed(ceiling, Unit.NEWTON_METRE, "T_most = clutch_capacity i_main shock"),
                ceilingStress,
                yield,
                twist(neededStress.value(), ceilingStress.value(), yield.value()));
    }

    private static Figure stress(double torque, double diameter, String symbol) {
        Figure stress = new ShaftTorsion(torque, diameter).shearStress();
        return Figure.computed(stress.value(), stress.unit(), "16000 abs(" + symbol + ") / (pi d^3)");
    }

    private static StandingStart.Twist twist(double needed, double ceiling, double yield) {
        if (ceiling < yield) {
            return StandingStart.Twist.NOT_REACHED;
        }
        return needed < yield ? StandingStart.Twist.ONLY_BY_SHOCK : StandingStart.Twist.REACHED;
    }

    private Launch launch(StartQuestion question, double overall, double clutchTorque, double load) {
        double net = clutchTorque - load;
        if (net <= 0) {
            return new Launch.NoLockUp(
                    Figure.computed(-net, Unit.NEWTON_METRE, "T_load - T_c; the clutch never closes"));
        }
        double radius = truck.wheelRadiusMetres();
        double inertia = question.massKg() * radius * radius / (overall * overall);
        double engine = truck.value(Parameter.START_RPM) * Math.PI / 30;
        double least = inertia * engine * engine * clutchTorque / net / 2000;
        double most = least * Math.max(1, 1 + load / clutchTorque);
        return new Launch.LocksUp(
                Figure.computed(
                        inertia * engine / net, Unit.SECOND, "t = J_v w / (T_c - T_load) where " + TRUCK_INERTIA),
                Figure.computed(
                        least, Unit.KILOJOULE, "W = J_v w^2 T_c / (T_c - T_load) / 2000 where " + TRUCK_INERTIA),
                Figure.computed(
                        most,
                        Unit.KILOJOULE,
                        "W_most = W max(1, (T_c + T_load) / T_c); with half of the torque that is over the load"),
                Figure.computed(
                        most / truck.value(Parameter.CLUTCH_HEAT_CAPACITY),
                        Unit.CELSIUS_CHANGE,
                        "W_most / heat_capacity"),
                Figure.computed(
                        engine / overall * radius * 3.6,
                        Unit.KILOMETRE_PER_HOUR,
                        "v = 3.6 (2 pi n_start / 60) r / (i_gear i_axle) where " + RADIUS));
    }

    private StandingStart.Verdict verdict(
            StartQuestion question,
            StandingStart.Reach reach,
            Launch launch,
            StandingStart.Mainshaft mainshaft,
            double load) {
        if (!(launch instanceof Launch.LocksUp closes)) {
            return StandingStart.Verdict.DOES_NOT_START;
        }
        if (question.gradePercent() > reach.byGrip().value()) {
            return StandingStart.Verdict.SPINS;
        }
        if (load < -truck.value(Parameter.CLUTCH_CAPACITY)) {
            return StandingStart.Verdict.RUNS_AWAY;
        }
        if (mainshaft.twist() == StandingStart.Twist.REACHED) {
            return StandingStart.Verdict.TWISTS_SHAFT;
        }
        if (truck.hasRange() && question.gear().range() == Range.HIGH) {
            return StandingStart.Verdict.HIGH_RANGE;
        }
        double bound = truck.value(Parameter.CLUTCH_START_ENERGY);
        if (closes.slipEnergy().value() > bound) {
            return StandingStart.Verdict.CLUTCH_OVERHEATED;
        }
        return closes.mostSlipEnergy().value() > bound
                ? StandingStart.Verdict.HOT_AT_PART_THROTTLE
                : StandingStart.Verdict.SENSIBLE;
    }
}
