package witnessmark.gearbox.shift;

import static witnessmark.gearbox.shift.Slip.radPerSecond;

import java.util.Comparator;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.shift.RangeShift.Cone;
import witnessmark.gearbox.shift.RangeShift.Orders;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;
import witnessmark.gearbox.shift.RangeShiftQuestion.SplitterMove;

/**
 * The synchronizer's part of a range shift. The splitter sits between the mainshaft and the auxiliary's countershafts, the
 * cone behind both: whichever order the two move in, the cone turns the auxiliary by the range step, and drags the mainshaft
 * along through the splitter as it stands while the cone works. What the splitter changes beside that its dogs take.
 * Rigid-body mechanics, derived.
 */
final class WorkCone {
    private static final String INERTIA = "J_cone = r_after^2 (J_auxiliary + s_cone^2 J_front) where J_front = ";
    private static final String RANGE_STEP = "n_out (R - 1) / r_after";
    /** Lever home and the input turning at idle: the cone stops the mainshaft and turns it the other way. */
    private static final String ADDED = "(n_out r_after + n_idle / (i_main s_cone)) / r_after";

    private final TruckProfile truck;
    private final RangeShiftQuestion question;
    private final double rangeAfter;
    private final double output;

    WorkCone(TruckProfile truck, RangeShiftQuestion question) {
        this.truck = truck;
        this.question = question;
        this.rangeAfter = question.to().range() == Range.LOW ? truck.rangeRatio() : 1;
        this.output = truck.outputRpm(question.roadKmh());
    }

    Cone cone() {
        double split = question.splitWhileConeWorks(truck);
        ConeClutch clutch = ConeClutch.of(truck);
        double direction = question.to().range() == Range.HIGH ? 1 : -1;
        double drag = direction * truck.value(Parameter.DRAG) * split * rangeAfter;
        Slip slip = slip(split, clutch.torque().value(), drag);
        double energy = slip.energy().value();
        Gear low = question.lowGear();
        Gear hardest = hardestProper(truck);
        return new Cone(
                mainshaftChange(),
                dogChange(),
                Figure.computed(slipRpm(split), Unit.RPM, "n_cone = " + slipFormula("s_cone")),
                Figure.computed(inertia(split), Unit.KILOGRAM_SQUARE_METRE, INERTIA + frontFormula()),
                slip.energy(),
                orders(),
                slip.energyWithDrag().map(figure -> noted(figure, "W_drag = W T / " + net())),
                times(energy, low, "low"),
                times(energy, hardest, "hardest"),
                clutch.torque(),
                slip.time().map(figure -> noted(figure, "t = J_cone (2 pi n_cone / 60) / " + net())),
                clutch.sticks());
    }

    private static Figure noted(Figure figure, String formula) {
        return Figure.computed(figure.value(), figure.unit(), formula);
    }

    /** Torque left to change speed at the cone. */
    private String net() {
        return "(T " + (question.to().range() == Range.HIGH ? "+" : "-") + " drag s_cone r_after)";
    }

    private Slip slip(double split, double torque, double helpingDrag) {
        return new Slip(inertia(split), radPerSecond(slipRpm(split)), torque, helpingDrag);
    }

    private boolean added() {
        return question.lever() == LeverTiming.LEVER_HOME_FIRST && question.againstTheGear();
    }

    private double slipRpm(double split) {
        return added()
                ? output + truck.value(Parameter.IDLE_RPM) / (front() * split * rangeAfter)
                : output * (truck.rangeRatio() - 1) / rangeAfter;
    }

    private String slipFormula(String split) {
        return (added() ? ADDED : RANGE_STEP).replace("s_cone", split);
    }

    private double front() {
        return question.to().lever().ratio();
    }

    private double inertia(double split) {
        return rangeAfter * rangeAfter * (truck.value(Parameter.AUXILIARY_INERTIA) + split * split * frontInertia());
    }

    private double frontInertia() {
        double mainshaft = truck.value(Parameter.MAINSHAFT_INERTIA);
        if (question.lever() != LeverTiming.LEVER_HOME_FIRST) {
            return mainshaft;
        }
        double engine = question.clutch() == Clutch.ENGAGED ? truck.value(Parameter.ENGINE_INERTIA) : 0;
        return mainshaft + (truck.value(Parameter.INPUT_INERTIA) + engine) * front() * front();
    }

    private String frontFormula() {
        if (question.lever() != LeverTiming.LEVER_HOME_FIRST) {
            return "J_mainshaft; lever in neutral";
        }
        return question.clutch() == Clutch.ENGAGED
                ? "J_mainshaft + (J_input + J_engine) i_main^2; lever home, clutch engaged"
                : "J_mainshaft + J_input i_main^2; lever home, pedal down";
    }

    private Figure mainshaftChange() {
        double after = question.auxiliaryAfter(truck);
        return added()
                ? Figure.computed(
                        output * after + truck.value(Parameter.IDLE_RPM) / front(),
                        Unit.RPM,
                        "n_out after + n_idle / i_main; lever home and the input turning, at idle: the two speeds add")
                : Figure.computed(
                        output * Math.abs(after - question.from().auxiliaryRatio()),
                        Unit.RPM,
                        "n_out abs(after - before); with the lever in neutral the mainshaft turns with the output already,"
                                + " forward or back");
    }

    /** What the splitter's dogs make the mainshaft jump; empty where it stays. */
    private Optional<Figure> dogChange() {
        if (!question.splitterMoves()) {
            return Optional.empty();
        }
        double step = Math.abs(question.to().splitRatio(truck) - question.from().splitRatio(truck));
        double rangeBefore = question.from().range() == Range.LOW ? truck.rangeRatio() : 1;
        return Optional.of(
                question.splitterFirst(truck)
                        ? Figure.computed(
                                output * rangeBefore * step, Unit.RPM, "n_out r_before abs(s_after - s_before)")
                        : Figure.computed(
                                output * rangeAfter * step, Unit.RPM, "n_out r_after abs(s_after - s_before)"));
    }

    private Optional<Orders> orders() {
        return question.splitterMoves()
                ? Optional.of(new Orders(
                        question.splitterFirst(truck) ? SplitterMove.SPLITTER_FIRST : SplitterMove.RANGE_FIRST,
                        energy(question.to().splitRatio(truck), "s_after"),
                        energy(question.from().splitRatio(truck), "s_before")))
                : Optional.empty();
    }

    private Figure energy(double split, String symbol) {
        String front = "(" + frontFormula().split(";")[0] + ")";
        return noted(
                slip(split, 0, 0).energy(),
                "r_after^2 (J_auxiliary + " + symbol + "^2 " + front + ") (2 pi " + slipFormula(symbol)
                        + " / 60)^2 / 2000");
    }

    /** Over the energy of a shift made in neutral with that gear at governed speed, its splitter standing still. */
    private Figure times(double energy, Gear low, String which) {
        return Figure.computed(
                energy / properEnergy(truck, low),
                Unit.RATIO,
                "W / W_" + which + " where W_" + which + " = (J_auxiliary + s_" + which + "^2 J_mainshaft)"
                        + " (2 pi n_governed (R - 1) / (60 i_" + which + "))^2 / 2000");
    }

    private static double properEnergy(TruckProfile truck, Gear low) {
        double split = low.splitRatio(truck);
        double inertia =
                truck.value(Parameter.AUXILIARY_INERTIA) + split * split * truck.value(Parameter.MAINSHAFT_INERTIA);
        double change = truck.value(Parameter.GOVERNED_RPM) * (truck.rangeRatio() - 1) / low.ratio();
        return new Slip(inertia, radPerSecond(change), 0, 0).energy().value();
    }

    /** The forward low-range gear whose shift at its ceiling costs the cone most. */
    static Gear hardestProper(TruckProfile truck) {
        return truck.gears().forwardIn(Range.LOW).stream()
                .max(Comparator.comparingDouble(gear -> properEnergy(truck, gear)))
                .orElseThrow();
    }
}
