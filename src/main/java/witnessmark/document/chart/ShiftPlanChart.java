package witnessmark.document.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import witnessmark.document.chart.Chart.Point;
import witnessmark.document.chart.Chart.Series;
import witnessmark.document.chart.Chart.Style;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.plan.PlannedShift;
import witnessmark.gearbox.plan.ShiftPlan;
import witnessmark.gearbox.speed.RoadSpeeds;
import witnessmark.gearbox.speed.SpeedUnits;

/** The saw-tooth diagram of a shift plan: engine speed over road speed, beside shifting always at governed speed. */
public final class ShiftPlanChart {

    private ShiftPlanChart() {}

    /** From the start after the last gap on; throws where the plan has no shifts there. */
    public static Chart of(TruckProfile truck, ShiftPlan plan, ChartLabels words) {
        if (plan.inOneGo().isEmpty()) {
            throw new QuestionRefused(
                    plan.end().isPresent()
                            ? "chart: truck " + truck.id()
                                    + " pulls no shift on this load and grade, so there is none to draw"
                            : "chart: truck " + truck.id() + " has one gear and so no shift to draw");
        }
        double governed = truck.value(Parameter.GOVERNED_RPM);
        List<Point> limits = plan.inOneGo().stream()
                .map(shift -> new Point(
                        words.speed(shift.roadSpeed().value()),
                        shift.luggingLimit().value()))
                .toList();
        return new Chart(
                words.titleOf(truck) + ": " + words.say("plan"),
                words.axis("road-speed", Unit.KILOMETRE_PER_HOUR),
                words.axis("engine-speed", Unit.RPM),
                List.of(
                        new Series(
                                words.say("progressive"),
                                Style.FULL_LINE,
                                teeth(truck, plan, words, shift -> shift.shiftAt()
                                        .value())),
                        new Series(
                                words.say("governed"), Style.DASHED_LINE, teeth(truck, plan, words, shift -> governed)),
                        new Series(words.say("lowest"), Style.MARKS, limits)),
                notes(truck, plan, words));
    }

    private static List<String> notes(TruckProfile truck, ShiftPlan plan, ChartLabels words) {
        List<String> notes = new ArrayList<>();
        plan.gaps()
                .forEach(gap ->
                        notes.add(words.say("gap", gap.from().id(), gap.to().id())));
        plan.end()
                .ifPresent(end -> notes.add(words.say(
                        "end",
                        end.notReached().id(),
                        Figure.given(plan.gradePercent(), Unit.PERCENT).text())));
        ceilings(truck, words).ifPresent(notes::add);
        return notes;
    }

    /** Low range's ceilings gear by gear; empty without a range. */
    static Optional<String> ceilings(TruckProfile truck, ChartLabels words) {
        SpeedUnits units = SpeedUnits.of(words.units());
        List<String> lines = new RoadSpeeds(truck)
                .lowRangeCeilings().stream()
                        .filter(ceiling -> !ceiling.gear().reverse())
                        .map(ceiling -> ceiling.line(units))
                        .toList();
        return lines.isEmpty() ? Optional.empty() : Optional.of(words.say("ceilings", String.join("; ", lines)));
    }

    private static List<Point> teeth(
            TruckProfile truck, ShiftPlan plan, ChartLabels words, Function<PlannedShift, Double> shiftAt) {
        RoadSpeeds speeds = new RoadSpeeds(truck);
        List<Point> points = new ArrayList<>();
        points.add(new Point(0, 0));
        for (PlannedShift shift : plan.inOneGo()) {
            double rpm = shiftAt.apply(shift);
            double speed =
                    words.speed(speeds.roadSpeed(shift.step().from(), rpm).value());
            points.add(new Point(speed, rpm));
            points.add(new Point(speed, shift.step().rpmAfter(rpm).value()));
        }
        double governed = truck.value(Parameter.GOVERNED_RPM);
        plan.highest()
                .ifPresent(gear -> points.add(
                        new Point(words.speed(speeds.roadSpeed(gear, governed).value()), governed)));
        return points;
    }
}
