package witnessmark.shell.truck;

import java.util.Locale;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.plan.PlannedShift;
import witnessmark.gearbox.plan.ShiftPlan;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.shell.print.Page;

/** A progressive shift plan beside shifting always at governed speed. */
final class ShiftPlanText {
    private final Page page;
    private final TruckProfile truck;
    private final SpeedUnits units;

    ShiftPlanText(Page page, TruckProfile truck, SpeedUnits units) {
        this.page = page;
        this.truck = truck;
        this.units = units;
    }

    void print(ShiftPlan plan, boolean formulas) {
        page.line(TruckText.title(truck) + ": shift plan for "
                + Figure.given(plan.massKg(), Unit.KILOGRAM).text() + " on a grade of "
                + Figure.given(plan.gradePercent(), Unit.PERCENT).text());
        page.blank();
        page.drawn("                       planned                          always at governed");
        page.drawn(String.format(
                "  %-9s %6s  %-16s %6s %6s   %-16s %6s",
                "shift", "at rpm", "road speed", "lands", "limit", "road speed", "lands"));
        plan.shifts().forEach(this::shift);
        if (plan.shifts().stream().anyMatch(PlannedShift::belowLimit)) {
            page.line("  * even governed speed lands below the limit: this step is too wide for load and grade");
        }
        page.blank();
        plan.meanShiftSpeed().ifPresent(mean -> page.item("mean shift speed " + mean.text()));
        plan.rangeEnergyShare()
                .ifPresent(share -> page.item(String.format(
                        Locale.ROOT,
                        "the range upshift costs the synchronizer %.0f %% of what it costs at governed speed",
                        100 * share.value())));
        if (formulas) {
            formulas(plan);
        }
        page.flush();
    }

    private void shift(PlannedShift shift) {
        page.drawn(String.format(
                Locale.ROOT,
                "  %-9s %6.0f  %-16s %6.0f %6.0f%s  %-16s %6.0f",
                shift.step().from().id() + "-" + shift.step().to().id(),
                shift.shiftAt().value(),
                units.whole(shift.roadSpeed()),
                shift.rpmAfter().value(),
                shift.luggingLimit().value(),
                shift.belowLimit() ? "*" : " ",
                units.whole(shift.governed().roadSpeed()),
                shift.governed().rpmAfter().value()));
    }

    private void formulas(ShiftPlan plan) {
        page.heading("Formulas");
        plan.shifts().stream().findFirst().ifPresent(shift -> {
            page.item("at rpm: " + shift.shiftAt().note());
            page.item("road speed: " + shift.roadSpeed().note());
            page.item("lands: " + shift.rpmAfter().note());
            page.item("limit: " + shift.luggingLimit().note());
        });
        plan.rangeEnergyShare().ifPresent(share -> page.item("range upshift: " + share.note()));
    }
}
