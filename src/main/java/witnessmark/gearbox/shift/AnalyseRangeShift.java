package witnessmark.gearbox.shift;

import java.util.ArrayList;
import java.util.List;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;

/**
 * Works a range shift out. Rigid-body mechanics of a synchronizer, derived: the low cone slips slower than the mainshaft by
 * the range ratio but feels its square of inertia, so that the energy is the same up and down at one road speed. All
 * torques and inertias that are not given are the profile's assumptions.
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
        RangeShift.Cone cone = new WorkCone(truck, question).cone();
        RangeShift.Engine engine = engine(question);
        List<Reason> reasons = reasons(question, cone, engine);
        return new RangeShift(
                question,
                Figure.computed(truck.outputRpm(question.roadKmh()), Unit.RPM, "n_out = v i_axle N_km / 60"),
                Figure.computed(
                        properCeilingKmh(question),
                        Unit.KILOMETRE_PER_HOUR,
                        "v_most = 60 n_governed / (i_low i_axle N_km)"),
                cone,
                engine,
                verdict(cone, engine, reasons),
                reasons);
    }

    private double properCeilingKmh(RangeShiftQuestion question) {
        return truck.roadKmh(governed / question.lowGear().ratio());
    }

    private RangeShift.Engine engine(RangeShiftQuestion question) {
        double sign = question.againstTheGear() ? -1 : 1;
        double rpm = sign
                * truck.outputRpm(question.roadKmh())
                * question.to().lever().ratio()
                * question.auxiliaryAfter(truck);
        return new RangeShift.Engine(
                Figure.computed(
                        rpm,
                        Unit.RPM,
                        question.againstTheGear()
                                ? "n_in = -n_out i_main after; rolling against the gear the input turns backwards"
                                : "n_in = n_out i_main after"),
                Figure.computed(Math.abs(rpm) / governed, Unit.RATIO, "abs(n_in) / n_governed"),
                outcome(question, rpm));
    }

    private RangeShift.Outcome outcome(RangeShiftQuestion question, double rpm) {
        if (question.roadKmh() == 0) {
            return RangeShift.Outcome.STANDING;
        }
        if (rpm < 0) {
            return question.lever() == LeverTiming.IN_NEUTRAL
                    ? RangeShift.Outcome.INPUT_WOULD_TURN_BACKWARDS
                    : RangeShift.Outcome.TURNED_BACKWARDS;
        }
        boolean neutral = question.lever() == LeverTiming.IN_NEUTRAL;
        boolean engaged = question.clutch() == Clutch.ENGAGED;
        if (rpm > governed * ShiftVerdict.PROPER_SPEED) {
            return neutral
                    ? RangeShift.Outcome.INPUT_WOULD_BE_OVERSPED
                    : engaged ? RangeShift.Outcome.ENGINE_OVERSPED : RangeShift.Outcome.DISC_OVERSPED;
        }
        if (rpm < truck.value(Parameter.IDLE_RPM)) {
            return neutral
                    ? RangeShift.Outcome.INPUT_WOULD_BE_BELOW_IDLE
                    : engaged ? RangeShift.Outcome.BELOW_IDLE : RangeShift.Outcome.DISC_BELOW_IDLE;
        }
        return RangeShift.Outcome.WITHIN_GOVERNED;
    }

    private static List<Reason> reasons(RangeShiftQuestion question, RangeShift.Cone cone, RangeShift.Engine engine) {
        List<Reason> reasons = new ArrayList<>();
        if (cone.timesHardestProper().value() > ShiftVerdict.PROPER_ENERGY) {
            reasons.add(Reason.ENERGY_ABOVE_PROPER);
        }
        if (engine.timesGoverned().value() > ShiftVerdict.PROPER_SPEED) {
            reasons.add(Reason.SPEED_ABOVE_GOVERNED);
        }
        if (engine.outcome() == RangeShift.Outcome.BELOW_IDLE) {
            reasons.add(Reason.BELOW_IDLE);
        }
        if (question.lever() == LeverTiming.LEVER_HOME_FIRST) {
            reasons.add(Reason.LEVER_HOME_FIRST);
        }
        if (question.roadKmh() > 0 && question.againstTheGear()) {
            reasons.add(question.lever() == LeverTiming.LEVER_HOME_FIRST ? Reason.SPEEDS_ADD : Reason.ROLLING_AGAINST);
        } else if (question.roadKmh() > 0 && question.rolling() == RangeShiftQuestion.Rolling.BACK) {
            reasons.add(Reason.ROLLING_BACK);
        }
        if (cone.time().isEmpty()) {
            reasons.add(Reason.CONE_CANNOT_FINISH);
        }
        return List.copyOf(reasons);
    }

    private static ShiftVerdict verdict(RangeShift.Cone cone, RangeShift.Engine engine, List<Reason> reasons) {
        ShiftVerdict byFigures = ShiftVerdict.ofEnergy(cone.timesHardestProper().value())
                .orWorse(ShiftVerdict.ofSpeed(engine.timesGoverned().value()));
        return reasons.isEmpty() ? byFigures : byFigures.orWorse(ShiftVerdict.HARD);
    }
}
