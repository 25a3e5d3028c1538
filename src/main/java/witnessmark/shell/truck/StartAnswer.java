package witnessmark.shell.truck;

import java.util.LinkedHashMap;
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
import witnessmark.gearbox.start.Start;
import witnessmark.gearbox.start.StartGears;
import witnessmark.gearbox.start.StartQuestion;
import witnessmark.gearbox.start.StartSymbols;
import witnessmark.shell.print.FigureJson;
import witnessmark.shell.print.FigureText;
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
        Start start = new AnalyseStart(truck).of(question);
        List<Symbol> symbols = StartSymbols.of(truck, question);
        Map<String, Object> json = json();
        json.put("gear", gear.id());
        json.put("verdict", start.verdict().words());
        json.put("mainshaft", start.mainshaft().twist().words());
        json.put("figures", FigureJson.of(start.figures()));
        json.put("inputs", FigureJson.of(symbols));
        List<ComputedFinding> findings = StartEvidence.of(truck, question);
        String id = String.format(Locale.ROOT, "start-in-%s-%.0f-kg", gear.id(), mass.value());
        return new TruckAnswer(
                Optional.of(truck),
                page -> print(page, start, findings, symbols, formulas),
                json,
                findings,
                id.toLowerCase(Locale.ROOT));
    }

    private void print(Page page, Start start, List<ComputedFinding> findings, List<Symbol> symbols, boolean formulas) {
        heading(page, "start in gear " + start.question().gear().id());
        page.strong("Verdict: " + start.verdict().words());
        findings.forEach(finding -> page.item(finding.summary()));
        if (truck.hasRange() && start.verdict() == Start.Verdict.HIGH_RANGE) {
            page.item("the same pull in low range puts " + ScreenFigures.times(1 / truck.rangeRatio())
                    + " this torque on the mainshaft");
        }
        page.item("this gear starts this mass on up to "
                + start.reach().steepest().text(page.units())
                + (start.reach().byGrip().value() < start.reach().byTorque().value()
                        ? ", where the drive wheels begin to spin; its torque would do for more"
                        : ""));
        page.blank().line("This says what such a start does; it does not say that it was made, or by whom.");
        new FigureText(page, formulas).print(start.figures(), symbols);
    }

    private TruckAnswer gears(StartGears.Load load) {
        StartGears gears = StartGears.of(truck, load, mass.value(), grade.value());
        Map<String, Object> json = json();
        json.put("lowest", gears.lowest().map(Gear::id).orElse(null));
        json.put("highest", gears.highest().map(Gear::id).orElse(null));
        json.put("starts", gears.starts().stream().map(StartAnswer::json).toList());
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

    private static String heat(Start start, Units units) {
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

    private Map<String, Object> json() {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("truck", truck.id());
        json.put("mass", FigureJson.of(mass));
        json.put("grade", FigureJson.of(grade));
        Unusual.put(json, unusual());
        return json;
    }

    private static Map<String, Object> json(Start start) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("gear", start.question().gear().id());
        json.put("verdict", start.verdict().words());
        json.put("steepest", FigureJson.of(start.reach().steepest()));
        if (start.launch() instanceof Launch.LocksUp closes) {
            json.put("slipEnergy", FigureJson.of(closes.slipEnergy()));
            json.put("mostSlipEnergy", FigureJson.of(closes.mostSlipEnergy()));
        }
        return json;
    }
}
