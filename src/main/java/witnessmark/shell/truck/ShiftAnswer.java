package witnessmark.shell.truck;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.gearbox.evidence.ShiftEvidence;
import witnessmark.gearbox.shift.AnalyseRangeShift;
import witnessmark.gearbox.shift.InRangeShift;
import witnessmark.gearbox.shift.RangeShift;
import witnessmark.gearbox.shift.RangeShiftQuestion;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;
import witnessmark.gearbox.shift.RangeShiftQuestion.Rolling;
import witnessmark.gearbox.shift.RangeShiftQuestion.SplitterMove;
import witnessmark.gearbox.shift.Reason;
import witnessmark.gearbox.shift.ShiftSymbols;
import witnessmark.gearbox.shift.ShiftVerdict;
import witnessmark.shell.print.FigureJson;
import witnessmark.shell.print.FigureText;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.shell.print.WrongUsage;

/** Works out a shift that somebody tells of, in words of a command. */
final class ShiftAnswer {

    /**
     * The shift as typed.
     *
     * @param unit of the speed where none stands behind it
     */
    record Words(
            String from,
            String to,
            String speed,
            String unit,
            Clutch clutch,
            LeverTiming lever,
            boolean rollingBack,
            SplitterMove splitter,
            boolean formulas) {}

    private static final String NOT_A_CHARGE =
            "This says what such a shift does; it does not say that it was made, or by whom.";

    private final TruckProfile truck;
    private final Words words;
    private final Gear from;
    private final Gear to;
    private final Figure speed;
    private final Clutch clutch;

    private ShiftAnswer(TruckProfile truck, Words words) {
        this.truck = truck;
        this.words = words;
        this.from = GearOption.of(truck, "--from", words.from());
        this.to = GearOption.of(truck, "--to", words.to());
        this.speed = RoadOptions.speed("--speed", words.speed(), words.unit());
        this.clutch = words.clutch();
    }

    /** Range shifts by the cone, others by the driver's match of speeds. */
    static TruckAnswer of(TruckProfile truck, Words words) {
        ShiftAnswer answer = new ShiftAnswer(truck, words);
        return answer.from.range() == answer.to.range() ? answer.inRange() : answer.range();
    }

    private TruckAnswer range() {
        RangeShift shift = new AnalyseRangeShift(truck)
                .of(new RangeShiftQuestion(
                        from,
                        to,
                        speed.value(),
                        clutch,
                        words.lever(),
                        words.rollingBack() ? Rolling.BACK : Rolling.FORWARD,
                        words.splitter()));
        List<Symbol> symbols = ShiftSymbols.of(truck, shift.question());
        Form json = new Form(
                asked(),
                shift.verdict().words(),
                shift.engine().outcome().words(),
                shift.cone()
                        .orders()
                        .map(orders ->
                                orders.counted() == SplitterMove.SPLITTER_FIRST ? "splitter-first" : "range-first"),
                Optional.of(shift.reasons().stream().map(Reason::words).toList()),
                FigureJson.of(shift.figures()),
                FigureJson.of(symbols));
        return answer(page -> print(page, shift, symbols), json, ShiftEvidence.of(truck, shift));
    }

    private void print(Page page, RangeShift shift, List<Symbol> symbols) {
        heading(page);
        page.strong("Verdict: " + shift.verdict().words());
        page.items(shift.reasons().stream().map(Reason::words).toList());
        page.item(shift.engine().outcome().words() + ": "
                + rpm(shift.engine().inputAfter()) + ", "
                + times(shift.engine().timesGoverned()) + " governed speed");
        page.item("cone: " + times(shift.cone().timesHardestProper())
                + " the slip energy of the hardest proper shift of this box");
        shift.cone().orders().ifPresent(orders -> page.item(order(page, orders)));
        page.item(
                shift.question().withReverse()
                        ? "a shift into or out of reverse is made at a standstill only"
                        : "made well, this shift is proper up to "
                                + shift.properCeiling().text(page.units()));
        page.blank().line(NOT_A_CHARGE);
        new FigureText(page, FigureText.Formulas.of(words.formulas())).print(shift.figures(), symbols);
    }

    private TruckAnswer inRange() {
        if (words.rollingBack()
                || words.splitter() != SplitterMove.AS_THE_GEARS_SAY
                || words.lever() != LeverTiming.PRESELECTED) {
            throw new WrongUsage(
                    "gears " + from.id() + " and " + to.id() + " are both in "
                            + from.range().name().toLowerCase(Locale.ROOT)
                            + " range, so that --lever, --rolling-back and --splitter have no meaning",
                    "leave them out");
        }
        InRangeShift shift = InRangeShift.of(truck, from, to, speed.value(), clutch);
        List<Symbol> symbols = ShiftSymbols.of(truck, shift);
        Form json = new Form(
                asked(),
                shift.verdict().words(),
                shift.outcome().words(),
                Optional.empty(),
                Optional.empty(),
                FigureJson.of(shift.figures()),
                FigureJson.of(symbols));
        return answer(page -> print(page, shift, symbols), json, ShiftEvidence.of(truck, shift));
    }

    private void print(Page page, InRangeShift shift, List<Symbol> symbols) {
        heading(page);
        page.strong("Verdict: "
                + (shift.verdict() == ShiftVerdict.PROPER
                        ? shift.outcome().words()
                        : shift.verdict().words() + ": " + shift.outcome().words()));
        page.item("engine speed " + rpm(shift.engineBefore()) + " before, " + rpm(shift.engineAfter()) + " after, "
                + times(shift.timesGoverned()) + " governed speed");
        page.item("gear " + to.id() + " is at governed speed at "
                + shift.ceiling().text(page.units()));
        page.item(
                shift.dogSpeedDifference().isPresent()
                        ? "only the splitter moves: its dogs have no cone, so the torque must be broken cleanly"
                        : "no range moves, so no cone works: the driver matches the speeds");
        page.blank().line(NOT_A_CHARGE);
        new FigureText(page, FigureText.Formulas.of(words.formulas())).print(shift.figures(), symbols);
    }

    private String order(Page page, RangeShift.Orders orders) {
        String counted = orders.counted() == SplitterMove.SPLITTER_FIRST ? "splitter first" : "range first";
        return "the splitter moves beside the range; reckoned here with the " + counted
                + (words.splitter() == SplitterMove.AS_THE_GEARS_SAY ? ", which costs the cone more" : "")
                + ": splitter first "
                + orders.splitterFirst().text(page.units()) + ", range first "
                + orders.rangeFirst().text(page.units())
                + ". The splitter's dogs have no cone for the rest of the mainshaft's change";
    }

    private void heading(Page page) {
        Unusual.print(page, Unusual.of(speed));
        page.line(TruckText.title(truck) + ": gear " + from.id() + " to gear " + to.id() + " at "
                + speed.text(page.units())
                + ", clutch " + (clutch == Clutch.ENGAGED ? "engaged" : "pedal down")
                + (rollsBack() ? ", rolling back" : ""));
        page.blank();
    }

    /** As said, or because it comes out of reverse. */
    private boolean rollsBack() {
        return words.rollingBack() || from.reverse();
    }

    private TruckAnswer answer(Consumer<Page> text, Form json, List<ComputedFinding> findings) {
        String id = String.format(Locale.ROOT, "shift-%s-to-%s-at-%.0f-km-h", from.id(), to.id(), speed.value());
        return new TruckAnswer(Optional.of(truck), text, json, findings, id.toLowerCase(Locale.ROOT));
    }

    private Asked asked() {
        return new Asked(
                truck.id(),
                from.id(),
                to.id(),
                FigureJson.of(speed),
                TruckOptions.word(words.clutch()),
                TruckOptions.word(words.lever()),
                rollsBack(),
                Json.some(Unusual.of(speed)));
    }

    private record Asked(
            String truck,
            String from,
            String to,
            FigureJson speed,
            String clutch,
            String lever,
            boolean rollingBack,
            Optional<List<String>> unusual) {}

    /**
     * @param order where splitter and range move at once
     * @param reasons of a range shift
     */
    private record Form(
            @Json.Inlined Asked asked,
            String verdict,
            String outcome,
            Optional<String> order,
            Optional<List<String>> reasons,
            Map<String, FigureJson> figures,
            List<FigureJson.Letter> inputs) {}

    private static String rpm(Figure figure) {
        return figure.in(Unit.RPM).text();
    }

    private static String times(Figure figure) {
        return ScreenFigures.times(figure.value());
    }
}
