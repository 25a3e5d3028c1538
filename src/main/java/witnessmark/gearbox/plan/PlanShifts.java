package witnessmark.gearbox.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.speed.RoadSpeeds;
import witnessmark.gearbox.speed.ShiftStep;
import witnessmark.gearbox.speed.Steps;
import witnessmark.gearbox.start.AnalyseStart;
import witnessmark.gearbox.start.StandingStart;
import witnessmark.gearbox.start.StartQuestion;

/** Plans one upshift after the other, as far as the engine pulls. */
final class PlanShifts {
    private final TruckProfile truck;
    private final RoadLoad load;
    private final LuggingLimit limit;
    private final double governed;
    private final double curveStart;
    private final List<PlannedShift> shifts = new ArrayList<>();
    private final List<ShiftStep> gaps = new ArrayList<>();
    /** Engine speed of the shift before, in one go. */
    private double before;

    private Optional<Gear> highest = Optional.empty();
    private Optional<NotPulled> end = Optional.empty();

    PlanShifts(RoadLoad load, ShiftPlan.Floor floor) {
        this.truck = load.truck();
        this.load = load;
        this.limit = new LuggingLimit(load, floor);
        this.governed = truck.value(Parameter.GOVERNED_RPM);
        this.curveStart = truck.torque().points().firstKey();
    }

    ShiftPlan plan(ShiftPlan.Floor floor) {
        Gear first = truck.gears().forward().get(0);
        double start = Math.min(governed, limit.of(first).value());
        if (firstPulled(rpm -> load.isPulled(first, rpm), start).isEmpty()) {
            end = Optional.of(notPulled(first, first, best(first, start, governed)));
        } else {
            highest = Optional.of(first);
        }
        for (ShiftStep step : Steps.of(truck).inOrder()) {
            if (end.isPresent()) {
                break;
            }
            if (tooWide(step)) {
                startAgain(step);
            } else {
                shift(step);
            }
        }
        return new ShiftPlan(
                floor,
                load.massKg(),
                load.gradePercent(),
                List.copyOf(shifts),
                List.copyOf(gaps),
                highest,
                end,
                load.lostPerSecond(),
                mean(),
                range());
    }

    private interface Pulls {
        boolean at(double rpm);
    }

    /** The first speed from there up to governed at which it pulls, looked for by whole revolutions. */
    private Optional<Double> firstPulled(Pulls pulls, double from) {
        for (double rpm = from; rpm <= governed; rpm = Math.floor(rpm) + 1) {
            if (pulls.at(rpm)) {
                return Optional.of(rpm);
            }
        }
        return pulls.at(governed) ? Optional.of(governed) : Optional.empty();
    }

    /** Whether even governed speed lands below the torque curve, where the engine would stall whatever the load. */
    private boolean tooWide(ShiftStep step) {
        return step.rpmAfter(governed).value() < curveStart - RoadLoad.ROUNDING;
    }

    /** Goes on from a start in the gear after, as with a deep reduction, which is for crawling. */
    private void startAgain(ShiftStep step) {
        StandingStart start =
                new AnalyseStart(truck).of(new StartQuestion(step.to(), load.massKg(), load.gradePercent()));
        if (start.verdict() != StandingStart.Verdict.SENSIBLE
                && start.verdict() != StandingStart.Verdict.HOT_AT_PART_THROTTLE) {
            double lands = step.rpmAfter(governed).value();
            end = Optional.of(notPulled(step.to(), step.to(), best(step.to(), lands, lands)));
            return;
        }
        gaps.add(step);
        highest = Optional.of(step.to());
        before = 0;
    }

    private void shift(ShiftStep step) {
        Figure least = limit.of(step.to());
        double factor = step.step().value();
        double wanted = least.value() * factor;
        double early = Math.min(governed, Math.max(before, wanted));
        Optional<Double> pulled =
                firstPulled(rpm -> load.isPulled(step.from(), rpm) && load.isPulled(step.to(), rpm / factor), early);
        if (pulled.isEmpty()) {
            end = Optional.of(
                    load.isPulled(step.from(), early)
                            ? notPulled(step.to(), step.to(), best(step.to(), early / factor, governed / factor))
                            : notPulled(step.from(), step.to(), best(step.from(), early, governed)));
            return;
        }
        double at = pulled.get();
        before = at;
        highest = Optional.of(step.to());
        RoadSpeeds speeds = new RoadSpeeds(truck);
        shifts.add(new PlannedShift(
                step,
                least,
                Figure.computed(
                        at,
                        Unit.RPM,
                        at > early
                                ? "raised to the first whole number of revolutions at which full torque holds the load in"
                                        + " both gears"
                                : "n_shift = min(n_governed, max(n_before, n_limit step))"),
                speeds.roadSpeed(step.from(), at),
                step.rpmAfter(at),
                wanted > governed,
                Figure.computed(
                        limit.byTorque(step.to()), Unit.RPM, "lowest speed whose full torque is 1.2 times T_load"),
                new PlannedShift.AtGoverned(speeds.roadSpeed(step.from(), governed), step.rpmAfter(governed))));
    }

    /** The whole number of revolutions there at which least is missing; between two, the lower one. */
    private double best(Gear gear, double from, double to) {
        double best = Math.min(Math.ceil(from - RoadLoad.ROUNDING), Math.floor(to));
        for (double rpm = best; rpm <= to; rpm++) {
            if (missing(gear, rpm) < missing(gear, best)) {
                best = rpm;
            }
        }
        return best;
    }

    private double missing(Gear gear, double rpm) {
        return load.engineTorque(gear, rpm) - truck.torque().atRpm(rpm);
    }

    private NotPulled notPulled(Gear gear, Gear notReached, double rpm) {
        return new NotPulled(
                gear,
                notReached,
                Figure.computed(rpm, Unit.RPM, "the best speed that can be had there"),
                Figure.computed(
                        load.engineTorque(gear, rpm),
                        Unit.NEWTON_METRE,
                        "(m g (sin(a) + f cos(a)) + 0.6125 drag_area (v / 3.6)^2) r / (i_gear i_axle)"),
                Figure.computed(truck.torque().atRpm(rpm), Unit.NEWTON_METRE, "full torque there"));
    }

    private Optional<Figure> mean() {
        return shifts.isEmpty()
                ? Optional.empty()
                : Optional.of(Figure.computed(
                        shifts.stream()
                                .mapToDouble(shift -> shift.shiftAt().value())
                                .average()
                                .orElseThrow(),
                        Unit.RPM,
                        "mean of the shift speeds"));
    }

    private Optional<Figure> range() {
        return shifts.stream()
                .filter(shift -> shift.step().kind() == ShiftStep.Kind.LEVER_AND_RANGE)
                .findFirst()
                .map(shift ->
                        shift.roadSpeed().value() / shift.governed().roadSpeed().value())
                .map(share -> Figure.computed(share * share, Unit.RATIO, "(v_planned / v_governed)^2"));
    }
}
