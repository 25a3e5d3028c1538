package witnessmark.gearbox.plan;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/**
 * What the road asks of the engine at a steady speed: grade, rolling of the tyres and air. Losses in the gears are left
 * out. Vehicle dynamics textbooks, from memory.
 *
 * @param massKg truck and trailer
 * @param gradePercent uphill positive
 */
record RoadLoad(TruckProfile truck, double massKg, double gradePercent) {

    static final double GRAVITY = 9.81;
    /** A landing on the first point of the curve itself is on it, whatever the last binary digit says. */
    static final double ROUNDING = 1e-6;
    /** Half the density of air at 15 degrees, kg/m3. */
    static final double HALF_AIR_DENSITY = 1.225 / 2;

    RoadLoad {
        if (!(massKg >= 500 && massKg <= 400_000)) {
            throw new QuestionRefused("mass: " + massKg + " kg cannot be", "give 500 to 400000 kg");
        }
        if (!(gradePercent >= -40 && gradePercent <= 40)) {
            throw new QuestionRefused("grade: " + gradePercent + " % cannot be", "give -40 to 40, uphill positive");
        }
    }

    /** Newton metres at the engine; negative where the road pushes. */
    double engineTorque(Gear gear, double rpm) {
        double metresPerSecond = truck.roadKmh(rpm / gear.ratio()) / 3.6;
        double pull = slope() + HALF_AIR_DENSITY * truck.value(Parameter.DRAG_AREA) * metresPerSecond * metresPerSecond;
        return pull * truck.wheelRadiusMetres() / (gear.ratio() * truck.value(Parameter.AXLE_RATIO));
    }

    private double slope() {
        double angle = Math.atan(gradePercent / 100);
        return massKg * GRAVITY * (Math.sin(angle) + truck.value(Parameter.ROLLING_RESISTANCE) * Math.cos(angle));
    }

    /** Whether full torque pulls the load in that gear at that engine speed; below the torque curve nothing is. */
    boolean isPulled(Gear gear, double rpm) {
        return rpm >= truck.torque().points().firstKey() - ROUNDING
                && truck.torque().atRpm(rpm) >= engineTorque(gear, rpm);
    }

    /** Road speed lost in each second without torque; negative where the truck gains. */
    Figure lostPerSecond() {
        return Figure.computed(
                3.6 * slope() / massKg,
                Unit.KILOMETRE_PER_HOUR_PER_SECOND,
                "3.6 g (sin(a) + f cos(a)) where a = atan(grade / 100); without the air");
    }
}
