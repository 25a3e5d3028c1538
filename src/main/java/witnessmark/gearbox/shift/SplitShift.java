package witnessmark.gearbox.shift;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/**
 * A shift of the splitter alone. It has dogs and no cone: no friction energy, but impact if the torque is not broken
 * cleanly or the dogs meet apart in speed.
 *
 * @param dogSpeedDifference mainshaft speed that the dogs must lose or gain
 */
public record SplitShift(Gear from, Gear to, Figure dogSpeedDifference) {

    /** Throws where the two gears differ in more than the splitter. */
    public static SplitShift of(TruckProfile truck, Gear from, Gear to, double roadKmh) {
        if (!from.lever().equals(to.lever()) || from.range() != to.range() || from.split() == to.split()) {
            throw new QuestionRefused(
                    "split shift: " + from.id() + " to " + to.id() + " is not the splitter alone",
                    "give two gears of one lever position and range");
        }
        double apart = Math.abs(from.auxiliaryRatio() - to.auxiliaryRatio());
        return new SplitShift(
                from,
                to,
                Figure.computed(truck.outputRpm(roadKmh) * apart, Unit.RPM, "v i_axle N_km / 60 abs(after - before)"));
    }
}
