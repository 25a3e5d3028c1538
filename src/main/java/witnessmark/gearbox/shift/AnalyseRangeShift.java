package witnessmark.gearbox.shift;

import static witnessmark.gearbox.shift.Slip.radPerSecond;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;

/**
 * Works a range shift out. Rigid-body mechanics of a synchronizer, from memory: the low cone slips slower than the
 * mainshaft by the range ratio but feels its square of inertia, so that the energy is the same up and down at one road
 * speed. All torques and inertias that are not given are the profile's assumptions.
 */
public final class AnalyseRangeShift {

    private final TruckProfile truck;
    private final double governed;

    /** Throws where the box has no range. */
    public AnalyseRangeShift(TruckProfile truck) {
        if (!truck.hasRange()) {
            throw new QuestionRefused(Parameter.RANGE_RATIO.key() + ": truck " + truck.id() + " has no range to shift");
        }
        this.truck = truck;
        this.governed = truck.value(Parameter.GOVERNED_RPM);
    }

    public RangeShift of(RangeShiftQuestion question) {
        RangeShift.Cone cone = cone(question);
        RangeShift.Engine engine = engine(question);
        List<Reason> reasons = reasons(question, cone, engine);
        return new RangeShift(
                question,
                Figure.computed(truck.outputRpm(question.roadKmh()), Unit.RPM, "n_out = v i_axle N_km / 60"),
                Figure.computed(
                        properCeilingKmh(question), Unit.KILOMETRE_PER_HOUR, "v = 60 n_governed / (i_low i_axle N_km)"),
                cone,
                engine,
                verdict(cone, engine, reasons),
                reasons);
    }

    private RangeShift.Cone cone(RangeShiftQuestion question) {
        double after = question.auxiliaryAfter(truck);
        double change = mainshaftChangeRpm(question);
        double inertia = inertia(question);
        ConeClutch clutch = ConeClutch.of(truck);
        double drag = truck.value(Parameter.DRAG) * (question.to().range() == Range.HIGH ? 1 : -1);
        double torque = clutch.torque().value();
        // Referred to the cone's own shaft: inertia times the ratio squared, drag times the ratio.
        Slip slip = new Slip(inertia * after * after, radPerSecond(change / after), torque, drag * after);
        double energy = slip.energy().value();
        return new RangeShift.Cone(
                Figure.computed(change, Unit.RPM, changeFormula(question)),
                Figure.computed(
                        change / after, Unit.RPM, "slip at the cone = mainshaft change / auxiliary ratio after"),
                Figure.computed(inertia, Unit.KILOGRAM_SQUARE_METRE, inertiaFormula(question)),
                slip.energy(),
                slip.energyWithDrag(),
                times(
                        energy,
                        properEnergy(lowGear(question).lever().ratio()),
                        "same shift, preselected, at its ceiling"),
                times(energy, properEnergy(fastestMainRatio()), "hardest proper shift of this box"),
                clutch.torque(),
                slip.time(),
                clutch.sticks());
    }

    private static Figure times(double energy, double reference, String what) {
        return Figure.computed(energy / reference, Unit.RATIO, "W / W(" + what + ")");
    }

    private boolean homeAgainst(RangeShiftQuestion question) {
        return question.lever() == LeverTiming.LEVER_HOME_FIRST && question.againstTheGear();
    }

    private double mainshaftChangeRpm(RangeShiftQuestion question) {
        double output = truck.outputRpm(question.roadKmh());
        double after = question.auxiliaryAfter(truck);
        return homeAgainst(question)
                ? output * after
                        + truck.value(Parameter.IDLE_RPM)
                                / question.to().lever().ratio()
                : output * Math.abs(after - question.from().auxiliaryRatio());
    }

    private String changeFormula(RangeShiftQuestion question) {
        return homeAgainst(question)
                ? "change = n_out x auxiliary ratio after + n_idle / i_main: rolling against the gear the speeds add"
                : "change = n_out |auxiliary ratio after - before|; direct to low: n_out (R - 1), overdrive to low:"
                        + " n_out (R - s)";
    }

    private double inertia(RangeShiftQuestion question) {
        double rear = rearInertia();
        if (question.lever() != LeverTiming.LEVER_HOME_FIRST) {
            return rear;
        }
        double main = question.to().lever().ratio();
        double engine = question.clutch() == Clutch.ENGAGED ? truck.value(Parameter.ENGINE_INERTIA) : 0;
        return rear + (truck.value(Parameter.INPUT_INERTIA) + engine) * main * main;
    }

    private static String inertiaFormula(RangeShiftQuestion question) {
        if (question.lever() != LeverTiming.LEVER_HOME_FIRST) {
            return "J = J_mainshaft + J_auxiliary: lever in neutral";
        }
        return question.clutch() == Clutch.ENGAGED
                ? "J = J_mainshaft + J_auxiliary + (J_input + J_engine) i_main^2: lever home, clutch engaged"
                : "J = J_mainshaft + J_auxiliary + J_input i_main^2: lever home, pedal down";
    }

    private double rearInertia() {
        return truck.value(Parameter.MAINSHAFT_INERTIA) + truck.value(Parameter.AUXILIARY_INERTIA);
    }

    /** Energy of a shift made in neutral at the speed where the low-range gear of this main ratio is at governed. */
    private double properEnergy(double mainRatio) {
        double change = governed / mainRatio * (1 - 1 / truck.rangeRatio());
        return new Slip(rearInertia(), radPerSecond(change), 0, 0).energy().value();
    }

    private double fastestMainRatio() {
        return truck.mainRatios().stream().min(Comparator.naturalOrder()).orElseThrow();
    }

    private static Gear lowGear(RangeShiftQuestion question) {
        return question.from().range() == Range.LOW ? question.from() : question.to();
    }

    private double properCeilingKmh(RangeShiftQuestion question) {
        return truck.roadKmh(governed / lowGear(question).ratio());
    }

    private RangeShift.Engine engine(RangeShiftQuestion question) {
        double sign = question.againstTheGear() ? -1 : 1;
        double rpm = sign
                * truck.outputRpm(question.roadKmh())
                * question.to().lever().ratio()
                * question.auxiliaryAfter(truck);
        return new RangeShift.Engine(
                Figure.computed(rpm, Unit.RPM, "n_in = n_out i_main x auxiliary ratio after"),
                Figure.computed(Math.abs(rpm) / governed, Unit.RATIO, "n_in / n_governed"),
                outcome(question, rpm));
    }

    private RangeShift.Outcome outcome(RangeShiftQuestion question, double rpm) {
        if (question.roadKmh() == 0) {
            return RangeShift.Outcome.STANDING;
        }
        if (rpm < 0) {
            return RangeShift.Outcome.TURNED_BACKWARDS;
        }
        if (rpm > governed * Verdict.PROPER_SPEED) {
            return question.lever() == LeverTiming.IN_NEUTRAL
                    ? RangeShift.Outcome.INPUT_WOULD_BE_OVERSPED
                    : question.clutch() == Clutch.ENGAGED
                            ? RangeShift.Outcome.ENGINE_OVERSPED
                            : RangeShift.Outcome.DISC_OVERSPED;
        }
        return rpm < truck.value(Parameter.IDLE_RPM)
                ? RangeShift.Outcome.BELOW_IDLE
                : RangeShift.Outcome.WITHIN_GOVERNED;
    }

    private static List<Reason> reasons(RangeShiftQuestion question, RangeShift.Cone cone, RangeShift.Engine engine) {
        List<Reason> reasons = new ArrayList<>();
        if (cone.timesHardestProper().value() > Verdict.PROPER_ENERGY) {
            reasons.add(Reason.ENERGY_ABOVE_PROPER);
        }
        if (engine.timesGoverned().value() > Verdict.PROPER_SPEED) {
            reasons.add(Reason.SPEED_ABOVE_GOVERNED);
        }
        if (question.lever() == LeverTiming.LEVER_HOME_FIRST) {
            reasons.add(Reason.LEVER_HOME_FIRST);
        }
        if (question.roadKmh() > 0 && question.againstTheGear()) {
            reasons.add(Reason.ROLLING_AGAINST);
        } else if (question.roadKmh() > 0 && question.rolling() == RangeShiftQuestion.Rolling.BACK) {
            reasons.add(Reason.ROLLING_BACK);
        }
        if (cone.time().isEmpty()) {
            reasons.add(Reason.CONE_CANNOT_FINISH);
        }
        return List.copyOf(reasons);
    }

    private static Verdict verdict(RangeShift.Cone cone, RangeShift.Engine engine, List<Reason> reasons) {
        Verdict byFigures = Verdict.ofEnergy(cone.timesHardestProper().value())
                .orWorse(Verdict.ofSpeed(engine.timesGoverned().value()));
        return reasons.isEmpty() ? byFigures : byFigures.orWorse(Verdict.HARD);
    }
}
