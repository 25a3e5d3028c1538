package witnessmark.gearbox.start;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/**
 * Works a start out: engine speed and clutch torque held until the clutch closes, losses left out. Energy of a clutch
 * at launch: machine design textbooks, from memory.
 */
public record AnalyseStart(TruckProfile truck) {

    /** Metres per second squared, rounded as handbooks do. */
    static final double GRAVITY = 9.81;

    public Start of(StartQuestion question) {
        Gear gear = question.gear();
        double overall = gear.ratio() * truck.value(Parameter.AXLE_RATIO);
        double wheelTorque =
                question.massKg() * GRAVITY * resistance(question.gradePercent()) * truck.wheelRadiusMetres();
        double clutchTorque = clutchTorque();
        Launch launch = launch(question, overall, clutchTorque, wheelTorque / overall);
        Start.Mainshaft mainshaft = mainshaft(gear, wheelTorque);
        return new Start(
                question,
                Figure.computed(
                        wheelTorque,
                        Unit.NEWTON_METRE,
                        "T_wheel = m g (sin a + f cos a) r, a = atan(grade), r = 1000 / (2 pi N_km)"),
                Figure.computed(wheelTorque / overall, Unit.NEWTON_METRE, "T_load = T_wheel / (i_gear i_axle)"),
                Figure.computed(
                        clutchTorque,
                        Unit.NEWTON_METRE,
                        "T_c = least of clutch capacity and engine torque at the held speed"),
                Figure.computed(
                        steepest(question.massKg(), overall, clutchTorque),
                        Unit.PERCENT,
                        "grade at which T_load = T_c"),
                mainshaft,
                launch,
                verdict(gear, launch, mainshaft));
    }

    /** Pull over weight that a grade and the rolling of the tyres ask. */
    private double resistance(double gradePercent) {
        double angle = Math.atan(gradePercent / 100);
        return Math.sin(angle) + truck.value(Parameter.ROLLING_RESISTANCE) * Math.cos(angle);
    }

    private double clutchTorque() {
        return Math.min(truck.value(Parameter.CLUTCH_CAPACITY), truck.torque().atRpm(truck.value(Parameter.START_RPM)));
    }

    private double steepest(double massKg, double overall, double clutchTorque) {
        double friction = truck.value(Parameter.ROLLING_RESISTANCE);
        double pull = clutchTorque * overall / (massKg * GRAVITY * truck.wheelRadiusMetres());
        // Pull beyond the weight climbs anything; the sine then has no angle.
        double sine = Math.min(1, pull / Math.sqrt(1 + friction * friction));
        double angle = Math.asin(sine) - Math.atan(friction);
        return 100 * Math.tan(Math.min(angle, Math.toRadians(80)));
    }

    private Start.Mainshaft mainshaft(Gear gear, double wheelTorque) {
        double diameter = truck.value(Parameter.MAINSHAFT_DIAMETER);
        double needed = wheelTorque / (truck.value(Parameter.AXLE_RATIO) * gear.auxiliaryRatio());
        double ceiling =
                truck.value(Parameter.CLUTCH_CAPACITY) * gear.lever().ratio() * truck.value(Parameter.SHOCK_FACTOR);
        Figure neededStress = new ShaftTorsion(needed, diameter).shearStress();
        Figure ceilingStress = new ShaftTorsion(ceiling, diameter).shearStress();
        Figure yield = ShaftTorsion.shearYield(truck.value(Parameter.YIELD));
        return new Start.Mainshaft(
                Figure.computed(needed, Unit.NEWTON_METRE, "T_main = T_wheel / (i_axle x auxiliary ratio)"),
                neededStress,
                Figure.computed(ceiling, Unit.NEWTON_METRE, "T_most = clutch capacity x i_main x shock factor"),
                ceilingStress,
                yield,
                twist(neededStress.value(), ceilingStress.value(), yield.value()));
    }

    private static Start.Twist twist(double needed, double ceiling, double yield) {
        if (ceiling < yield) {
            return Start.Twist.NOT_REACHED;
        }
        return needed < yield ? Start.Twist.ONLY_BY_SHOCK : Start.Twist.REACHED;
    }

    private Launch launch(StartQuestion question, double overall, double clutchTorque, double load) {
        double net = clutchTorque - load;
        if (net <= 0) {
            return new Launch.NoLockUp(
                    Figure.computed(-net, Unit.NEWTON_METRE, "T_load - T_c: the clutch never closes"));
        }
        double radius = truck.wheelRadiusMetres();
        double inertia = question.massKg() * radius * radius / (overall * overall);
        double engine = truck.value(Parameter.START_RPM) * Math.PI / 30;
        double energy = inertia * engine * engine * clutchTorque / net / 2000;
        return new Launch.LocksUp(
                Figure.computed(
                        inertia * engine / net,
                        Unit.SECOND,
                        "t = J_v w_e / (T_c - T_load), J_v = m r^2 / (i_gear i_axle)^2"),
                Figure.computed(energy, Unit.KILOJOULE, "W = 1/2 J_v w_e^2 T_c / (T_c - T_load)"),
                Figure.computed(
                        energy / truck.value(Parameter.CLUTCH_HEAT_CAPACITY),
                        Unit.CELSIUS_CHANGE,
                        "rise = W / (heat capacity of plates and flywheel)"),
                Figure.computed(
                        engine / overall * radius * 3.6, Unit.KILOMETRE_PER_HOUR, "v = 3.6 w_e r / (i_gear i_axle)"));
    }

    private Start.Verdict verdict(Gear gear, Launch launch, Start.Mainshaft mainshaft) {
        if (launch instanceof Launch.LocksUp closes) {
            if (mainshaft.twist() == Start.Twist.REACHED) {
                return Start.Verdict.TWISTS_SHAFT;
            }
            if (truck.hasRange() && gear.range() == Range.HIGH) {
                return Start.Verdict.HIGH_RANGE;
            }
            return closes.slipEnergy().value() > truck.value(Parameter.CLUTCH_START_ENERGY)
                    ? Start.Verdict.CLUTCH_OVERHEATED
                    : Start.Verdict.SENSIBLE;
        }
        return Start.Verdict.DOES_NOT_START;
    }
}
