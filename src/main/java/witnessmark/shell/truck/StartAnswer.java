package witnessmark.shell.truck;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.gearbox.evidence.StartEvidence;
import witnessmark.gearbox.start.AnalyseStart;
import witnessmark.gearbox.start.Launch;
import witnessmark.gearbox.start.StandingStart;
import witnessmark.gearbox.start.StartGears;
import witnessmark.gearbox.start.StartQuestion;
import witnessmark.gearbox.start.StartSymbols;
import witnessmark.shell.print.FigureJson;
import witnessmark.shell.print.FigureText;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;

/** Works out a start from rest, in words of a command: one gear, or all that may be started in. */
final class StartAnswer {
    private final TruckProfile truck;
    private final Figure mass;
    private final Figure grade;

    private StartAnswer(TruckProfile truck, Figure mass, Figure grade) {
        this.truck = truck;
        this.mass = mass;
        this.grade = grade;
    }

    /** The start in one gear; without a gear in every gear of the lowest range. */
    static TruckAnswer of(TruckProfile truck, String gear, String massWord, String gradeWord, boolean formulas) {
        StartAnswer answer = new StartAnswer(
                truck, RoadOptions.mass(truck, massWord), RoadOptions.grade(truck, Parameter.START_GRADE, gradeWord));
        return gear.isEmpty()
                ? answer.gears(massWord.equals("empty") ? StartGears.Load.EMPTY : StartGears.Load.LOADED)
                : answer.one(GearOption.of(truck, "--gear", gear), formulas);
    }

    private TruckAnswer one(Gear gear, boolean formulas) {
        StartQuestion question = new StartQuestion(gear, mass.value(), grade.value());
        StandingStart start = new AnalyseStart(truck).of(question);
        List<Symbol> symbols = StartSymbols.of(truck, question);
        One json = new One(
                asked(),
                gear.id(),
                start.verdict().words(),
                start.mainshaft().twist().words(),
                FigureJson.of(start.figures()),
                FigureJson.of(symbols));
        List<ComputedFinding> findings = StartEvidence.of(truck, question);
        String id = String.format(Locale.ROOT, "start-in-%s-%.0f-kg", gear.id(), mass.value());
        return new TruckAnswer(
                Optional.of(truck),
                page -> print(page, start, findings, symbols, formulas),
                json,
                findings,
                id.toLowerCase(Locale.ROOT));
    }

    private void print(
            Page page, StandingStart start, List<ComputedFinding> findings, List<Symbol> symbols, boolean formulas) {
        heading(page, "start in gear " + start.question().gear().id());
        page.strong("Verdict: " + start.verdict().words());
        findings.forEach(finding -> page.item(finding.summary()));
        if (truck.hasRange() && start.verdict() == StandingStart.Verdict.HIGH_RANGE) {
            page.item("the same pull in low range puts " + ScreenFigures.times(1 / truck.rangeRatio())
                    + " this torque on the mainshaft");
        }
        page.item("this gear starts this mass on up to "
                + start.reach().steepest().text(page.units())
                + (start.reach().byGrip().value() < start.reach().byTorque().value()
                        ? ", where the drive wheels begin to spin; its torque would do for more"
                        : ""));
        page.blank().line("This says what such a start does; it does not say that it was made, or by whom.");
        new FigureText(page, FigureText.Formulas.of(formulas)).print(start.figures(), symbols);
    }

    private TruckAnswer gears(StartGears.Load load) {
        StartGears gears = StartGears.of(truck, load, mass.value(), grade.value());
        Several json = new Several(
                asked(),
                TruckJson.Starts.of(gears),
                gears.starts().stream().map(StartForm::of).toList());
        return new TruckAnswer(Optional.of(truck), page -> print(page, gears), json, List.of(), "start-gears");
    }

    private void print(Page page, StartGears gears) {
        heading(page, "gears to start in");
        page.strong(sensible(gears.lowest(), gears.highest()));
        page.blank().drawn(String.format("  %-5s %-14s %-14s %s", "gear", "clutch heat", "steepest grade", "verdict"));
        gears.starts()
                .forEach(start -> page.indented(
                        String.format(
                                "  %-5s %-14s %-14s ",
                                start.question().gear().id(),
                                heat(start, page.units()),
                                start.reach().steepest().text(page.units())),
                        " ".repeat(37),
                        start.verdict().words()));
        page.line("  Clutch heat: from all the torque there is to half of what is over the load; the latter is judged");
        page.blank()
                .line("One gear with all its figures: truck start " + truck.id() + " --gear "
                        + gears.starts().get(0).question().gear().id());
    }

    private static String sensible(Optional<Gear> lowest, Optional<Gear> highest) {
        return lowest.isEmpty() || highest.isEmpty()
                ? "No gear starts this sensibly: the load or the grade is too much for this truck"
                : lowest.equals(highest)
                        ? "Start in " + lowest.get().id()
                        : "Start in " + lowest.get().id() + "; no higher than "
                                + highest.get().id();
    }

    private static String heat(StandingStart start, Units units) {
        if (!(start.launch() instanceof Launch.LocksUp closes)) {
            return "no end";
        }
        Unit read = units.shown(Unit.KILOJOULE);
        String least = closes.slipEnergy().in(read).number();
        return least + "-" + closes.mostSlipEnergy().in(read).number() + " " + read.symbol();
    }

    /** What the profile gave is asked about with the profile. */
    private List<String> unusual() {
        return Stream.of(mass, grade)
                .filter(figure -> !truck.figures().containsValue(figure))
                .flatMap(figure -> Unusual.of(figure).stream())
                .toList();
    }

    private void heading(Page page, String what) {
        Unusual.print(page, unusual());
        page.line(TruckText.title(truck) + ": " + what + ", " + mass.text(page.units()) + " on a grade of "
                + grade.text(page.units()));
        page.blank();
    }

    private Asked asked() {
        return new Asked(truck.id(), FigureJson.of(mass), FigureJson.of(grade), Json.some(unusual()));
    }

    private record Asked(String truck, FigureJson mass, FigureJson grade, Optional<List<String>> unusual) {}

    private record One(
            @Json.Inlined Asked asked,
            String gear,
            String verdict,
            String mainshaft,
            Map<String, FigureJson> figures,
            List<FigureJson.Letter> inputs) {}

    private record Several(@Json.Inlined Asked asked, @Json.Inlined TruckJson.Starts gears, List<StartForm> starts) {}

    /** Heat of the clutch only where it locks up. */
    private record StartForm(
            String gear,
            String verdict,
            FigureJson steepest,
            Optional<FigureJson> slipEnergy,
            Optional<FigureJson> mostSlipEnergy) {
        static StartForm of(StandingStart start) {
            Optional<Launch.LocksUp> closes =
                    start.launch() instanceof Launch.LocksUp locks ? Optional.of(locks) : Optional.empty();
            return new StartForm(
                    start.question().gear().id(),
                    start.verdict().words(),
                    FigureJson.of(start.reach().steepest()),
                    closes.map(c -> FigureJson.of(c.slipEnergy())),
                    closes.map(c -> FigureJson.of(c.mostSlipEnergy())));
        }
    }
}
