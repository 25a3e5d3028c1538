package witnessmark.shell.truck;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.plan.NotPulled;
import witnessmark.gearbox.plan.PlanSymbols;
import witnessmark.gearbox.plan.PlannedShift;
import witnessmark.gearbox.plan.ShiftPlan;
import witnessmark.gearbox.speed.ShiftStep;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.shell.print.Page;

/** A progressive shift plan beside shifting always at governed speed. */
final class ShiftPlanText {
    private final Page page;
    private final TruckProfile truck;
    private final SpeedUnits units;

    ShiftPlanText(Page page, TruckProfile truck) {
        this.page = page;
        this.truck = truck;
        this.units = SpeedUnits.of(page.units());
    }

    void print(ShiftPlan plan, boolean formulas) {
        TruckText.questions(page, truck);
        Unusual.print(page, unusual(truck, plan));
        page.line(TruckText.title(truck) + ": shift plan for "
                + Figure.given(plan.massKg(), Unit.KILOGRAM).text(page.units()) + " on a grade of "
                + Figure.given(plan.gradePercent(), Unit.PERCENT).text(page.units()));
        page.blank();
        plan.end().ifPresent(end -> end(plan, end));
        plan.gaps().forEach(this::gap);
        if (!plan.shifts().isEmpty()) {
            table(plan);
        } else if (truck.gears().forward().size() == 1) {
            page.item("one forward gear, so there is no shift to plan");
        }
        if (plan.gradePercent() > 0) {
            page.item("out of gear the truck loses " + plan.lostPerSecond().text(page.units())
                    + " on this grade; the plan leaves that out, so shift later where it is steep");
        }
        if (formulas) {
            formulas(plan);
        }
        page.flush();
    }

    /** What the profile gave is asked about with the profile. */
    static List<String> unusual(TruckProfile truck, ShiftPlan plan) {
        return Stream.of(Figure.given(plan.massKg(), Unit.KILOGRAM), Figure.given(plan.gradePercent(), Unit.PERCENT))
                .filter(figure -> truck.figures().values().stream()
                        .noneMatch(own -> own.unit() == figure.unit() && own.value() == figure.value()))
                .flatMap(figure -> Unusual.of(figure).stream())
                .toList();
    }

    private void end(ShiftPlan plan, NotPulled end) {
        page.strong(headline(plan, end));
        page.item(why(plan, end));
        page.blank();
    }

    private String headline(ShiftPlan plan, NotPulled end) {
        return plan.highest()
                .map(gear -> stalls(end)
                        ? "Gear " + gear.id() + " is the highest that can be reached by shifting up"
                        : "On this grade gear " + gear.id() + " is the highest that the engine pulls")
                .orElse("On this grade no gear of this truck pulls the load");
    }

    private boolean stalls(NotPulled end) {
        return end.engineSpeed().value() < curveStart();
    }

    private double curveStart() {
        return truck.torque().points().firstKey();
    }

    private String why(ShiftPlan plan, NotPulled end) {
        String gear = "gear " + end.gear().id();
        if (stalls(end)) {
            return gear + " would turn the engine at " + rpm(end.engineSpeed().value()) + " at most, below its torque"
                    + " curve, which begins at " + rpm(curveStart());
        }
        String needs = " needs " + end.needed().text(page.units()) + " of the engine at "
                + rpm(end.engineSpeed().value()) + "; full torque is "
                + end.torque().text(page.units());
        return plan.highest().equals(Optional.of(end.gear()))
                ? gear + " does not come to the speed at which the next gear is due: it" + needs
                : gear + needs;
    }

    private static String rpm(double value) {
        return Figure.given(value, Unit.RPM).text();
    }

    private void gap(ShiftStep gap) {
        double governed = truck.value(Parameter.GOVERNED_RPM);
        page.item(gap.from().id() + " to " + gap.to().id()
                + " cannot be shifted under way: even governed speed lands at "
                + gap.rpmAfter(governed).text() + ", below the torque curve, which begins at " + rpm(curveStart())
                + "; " + gap.from().id() + " is for crawling, so start in "
                + gap.to().id() + " to shift on");
        page.blank();
    }

    private void table(ShiftPlan plan) {
        page.drawn("                       planned                          always at governed");
        page.drawn(String.format(
                "  %-9s %6s  %-16s %6s %6s   %-16s %6s",
                "shift", "at rpm", "road speed", "lands", "limit", "road speed", "lands"));
        plan.shifts().forEach(this::shift);
        if (plan.shifts().stream().anyMatch(PlannedShift::belowLimit)) {
            page.line("  * even governed speed lands below the limit: this step is too wide for load and grade");
        }
        page.blank();
        plan.meanShiftSpeed().ifPresent(mean -> page.item("mean shift speed " + mean.text(page.units())));
        plan.rangeEnergyShare()
                .ifPresent(share -> page.item(String.format(
                        Locale.ROOT,
                        "the range upshift costs the synchronizer %.0f %% of what it costs at governed speed",
                        100 * share.value())));
    }

    private void shift(PlannedShift shift) {
        page.drawn(String.format(
                Locale.ROOT,
                "  %-9s %6s  %-16s %6s %6s%s  %-16s %6s",
                shift.step().from().id() + "-" + shift.step().to().id(),
                shift.shiftAt().number(),
                units.whole(shift.roadSpeed()),
                shift.rpmAfter().number(),
                shift.luggingLimit().number(),
                shift.belowLimit() ? "*" : " ",
                units.whole(shift.governed().roadSpeed()),
                shift.governed().rpmAfter().number()));
    }

    private void formulas(ShiftPlan plan) {
        page.heading("Formulas");
        plan.shifts().stream().findFirst().ifPresent(shift -> {
            page.item("limit: " + shift.luggingLimit().note());
            page.item("n_torque: " + shift.byTorque().note() + " at n_pull");
            page.item("at rpm: n_shift = min(n_governed, max(n_before, n_limit step)), later where full torque does not"
                    + " hold the load");
            page.item("road speed: " + shift.roadSpeed().note() + " at n_shift in the gear before");
            page.item("lands: " + shift.rpmAfter().note());
            page.item("step: " + shift.step().step().note());
        });
        page.item("T_load: (m g (sin(a) + f cos(a)) + 0.6125 drag_area (v / 3.6)^2) r / (i_gear i_axle)"
                + " where a = atan(grade / 100), r = 1000 / (2 pi N_km)");
        plan.rangeEnergyShare().ifPresent(share -> page.item("range upshift: " + share.note()));
        page.item("lost in a second: " + plan.lostPerSecond().note());
        page.heading("What the letters stand for");
        PlanSymbols.of(truck, plan)
                .forEach(symbol -> page.item(symbol.symbol() + ": " + symbol.meaning() + ", "
                        + symbol.figure().text(page.units())));
        plan.shifts()
                .forEach(shift -> page.item("n_torque for gear "
                        + shift.step().to().id() + ": " + shift.byTorque().text(page.units())));
    }
}
