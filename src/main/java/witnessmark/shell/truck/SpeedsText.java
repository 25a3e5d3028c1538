package witnessmark.shell.truck;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Split;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.speed.RoadSpeeds;
import witnessmark.gearbox.speed.ShiftStep;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.gearbox.speed.Steps;
import witnessmark.gearbox.speed.Steps.Evenness;
import witnessmark.shell.print.Page;

/** Road speeds by gear and engine speed, the steps between the gears, and what speeds belong to low range. */
final class SpeedsText {
    private static final int LEAD = 14;

    private final Page page;
    private final TruckProfile truck;
    private final SpeedUnits units;
    private final RoadSpeeds speeds;

    SpeedsText(Page page, TruckProfile truck) {
        this.page = page;
        this.truck = truck;
        this.units = SpeedUnits.of(page.units());
        this.speeds = new RoadSpeeds(truck);
    }

    void print(List<Double> rpms) {
        TruckText.questions(page, truck);
        page.line(TruckText.title(truck));
        table(rpms);
        ceilings();
        steps();
        evenness(Steps.of(truck).highRangeEvenness());
        cruising();
        if (truck.figure(Parameter.TYRE_REVS).basis() == Basis.ASSUMED) {
            page.blank()
                    .indented(
                            "  ",
                            "  ",
                            "All road speeds rest on an assumed tyre: "
                                    + truck.figure(Parameter.TYRE_REVS).text(page.units()) + ", "
                                    + truck.figure(Parameter.TYRE_REVS).note());
        }
        page.flush();
    }

    private void table(List<Double> rpms) {
        page.heading("Road speed, " + units.heading() + ", by gear and engine speed");
        int cell = units == SpeedUnits.BOTH ? 14 : 8;
        int columns = Math.max(1, (page.width() - LEAD) / cell);
        for (int from = 0; from < rpms.size(); from += columns) {
            if (from > 0) {
                page.blank();
            }
            columns(rpms.subList(from, Math.min(rpms.size(), from + columns)), cell);
        }
    }

    private void columns(List<Double> rpms, int width) {
        StringBuilder head = new StringBuilder("  gear   ratio");
        rpms.forEach(rpm ->
                head.append(right(BigDecimal.valueOf(rpm).stripTrailingZeros().toPlainString(), width)));
        page.drawn(head.toString());
        for (RoadSpeeds.Row row : speeds.table(rpms)) {
            StringBuilder line = new StringBuilder(String.format(
                    Locale.ROOT, "  %-4s %7.3f", row.gear().id(), row.gear().ratio()));
            row.atEngineSpeeds().forEach(speed -> line.append(right(units.cell(speed), width)));
            page.drawn(line.toString());
        }
    }

    private static String right(String text, int width) {
        return " ".repeat(Math.max(1, width - text.length())) + text;
    }

    private void ceilings() {
        if (!truck.hasRange()) {
            return;
        }
        page.heading("Low range: the highest road speed at which each gear may be taken");
        speeds.lowRangeCeilings()
                .forEach(ceiling -> page.strong(
                        String.format("%-4s ", ceiling.gear().id()),
                        "never above " + ceiling.limit()
                                + (ceiling.gear().reverse() ? ", and taken at a standstill only" : "")));
    }

    private void steps() {
        double governed = truck.value(Parameter.GOVERNED_RPM);
        Steps steps = Steps.of(truck);
        if (steps.inOrder().isEmpty()) {
            return;
        }
        page.heading(String.format(
                Locale.ROOT,
                "Steps, and what an upshift at governed speed (%.0f rpm) takes from the engine",
                governed));
        page.drawn("  shift        step   drop rpm   drop    what moves");
        steps.inOrder().forEach(step -> step(step, governed));
        List<ShiftStep> whole = steps.byLever().stream()
                .filter(step -> !steps.inOrder().contains(step))
                .toList();
        if (!whole.isEmpty()) {
            page.line("  Whole lever steps, splitter left alone:");
            whole.forEach(step -> step(step, governed));
        }
    }

    private void step(ShiftStep step, double governed) {
        page.drawn(String.format(
                Locale.ROOT,
                "  %-11s %5.3f %10s %5.1f %%   %s",
                step.from().id() + " to " + step.to().id(),
                step.step().value(),
                step.drop(governed).number(),
                100 * step.dropShare(),
                moves(step)));
    }

    static String moves(ShiftStep step) {
        return switch (step.kind()) {
            case SPLIT -> "splitter";
            case LEVER -> "lever";
            case LEVER_AND_SPLIT -> "lever and splitter";
            case LEVER_AND_RANGE -> splitterMoves(step) ? "lever, range and splitter" : "lever and range";
        };
    }

    /** Where low range is not split the splitter rests in direct. */
    private static boolean splitterMoves(ShiftStep step) {
        return (step.from().split() == Split.SPLIT) != (step.to().split() == Split.SPLIT);
    }

    private void evenness(Optional<Evenness> evenness) {
        evenness.ifPresent(even -> page.indented(
                "  High range: ",
                "    ",
                word(even.verdict())
                        + String.format(
                                Locale.ROOT,
                                "; its whole lever steps take %.1f to %.1f %% of the engine speed",
                                100 * even.least(),
                                100 * even.most())));
    }

    private static String word(Evenness.Verdict verdict) {
        return switch (verdict) {
            case EQUAL -> "equal steps, one drop to learn";
            case NEARLY_EQUAL -> "nearly equal steps, one drop to learn";
            case UNEVEN -> "uneven steps, each has its own drop";
        };
    }

    private void cruising() {
        RoadSpeeds.CruisingBand band = speeds.cruisingBand();
        page.heading("Cruising in gear " + band.gear().id());
        page.indented(
                "  ",
                "  ",
                "from " + units.whole(band.from()) + " (lowest pulling speed), best up to " + units.whole(band.ease())
                        + ", governed at " + units.whole(band.most()));
    }
}
