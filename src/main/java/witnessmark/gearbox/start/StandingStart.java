package witnessmark.gearbox.start;

import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.gearbox.Figure;

/**
 * What a start asks of the driveline.
 *
 * @param wheelTorque torque at the drive wheels that holds the load
 * @param loadAtClutch the same at the clutch
 * @param clutchTorque torque that engine and clutch can give at the held engine speed
 * @param reach the steepest grade that can be started on
 */
public record StandingStart(
        StartQuestion question,
        Figure wheelTorque,
        Figure loadAtClutch,
        Figure clutchTorque,
        Reach reach,
        Mainshaft mainshaft,
        Launch launch,
        Verdict verdict) {

    /**
     * Steepest grades, per cent; negative where it needs a fall.
     *
     * @param byTorque on which clutch and engine still start this mass in this gear
     * @param byGrip on which the drive wheels still hold
     * @param steepest the lesser of the two
     */
    public record Reach(Figure byTorque, Figure byGrip, Figure steepest) {}

    /**
     * The mainshaft's part.
     *
     * @param needed torque that holds the load
     * @param neededStress shear stress from it
     * @param ceiling most torque that a let-in clutch can put on it
     * @param ceilingStress shear stress from that
     * @param shearYield stress at which it twists for good
     */
    public record Mainshaft(
            Figure needed, Figure neededStress, Figure ceiling, Figure ceilingStress, Figure shearYield, Twist twist) {}

    /** Whether the mainshaft can be twisted for good. */
    public enum Twist {
        NOT_REACHED("not even a let-in clutch reaches yield"),
        ONLY_BY_SHOCK("the load alone does not reach yield; a let-in clutch against stuck wheels could"),
        REACHED("both the load and the clutch reach yield");

        private final String words;

        Twist(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public enum Verdict {
        SENSIBLE("a sensible start"),
        HOT_AT_PART_THROTTLE(
                "a sensible start only with all the torque there is: let in gently, the clutch takes more energy than an"
                        + " ordinary start should cost"),
        CLUTCH_OVERHEATED(
                "too high a gear, or in the lowest too heavy a load: the clutch takes more energy than an ordinary start"
                        + " should cost"),
        HIGH_RANGE("high range: never start in it"),
        DOES_NOT_START("does not start: the clutch never closes"),
        SPINS("does not start: the drive wheels spin on this grade"),
        RUNS_AWAY("runs away: the load pushes harder than the clutch holds, so that only the brakes hold this truck"),
        TWISTS_SHAFT("can twist the mainshaft");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Every figure by its name, in the order to show them; each carries its formula. */
    public Map<String, Figure> figures() {
        Map<String, Figure> figures = new LinkedHashMap<>();
        figures.put("wheel torque needed", wheelTorque);
        figures.put("torque needed at the clutch", loadAtClutch);
        figures.put("clutch torque", clutchTorque);
        figures.put("steepest grade by torque", reach.byTorque());
        figures.put("steepest grade by grip", reach.byGrip());
        figures.put("steepest grade to start on", reach.steepest());
        figures.put("mainshaft torque needed", mainshaft.needed());
        figures.put("mainshaft shear stress needed", mainshaft.neededStress());
        figures.put("mainshaft torque at most", mainshaft.ceiling());
        figures.put("mainshaft shear stress at most", mainshaft.ceilingStress());
        figures.put("shear yield", mainshaft.shearYield());
        if (launch instanceof Launch.LocksUp closes) {
            figures.put("time of slip", closes.time());
            figures.put("clutch slip energy, full torque", closes.slipEnergy());
            figures.put("clutch slip energy, gently let in", closes.mostSlipEnergy());
            figures.put("clutch heating", closes.heating());
            figures.put("road speed at lock-up", closes.roadSpeed());
        } else if (launch instanceof Launch.NoLockUp slips) {
            figures.put("torque missing at the clutch", slips.shortfall());
        }
        return figures;
    }
}
