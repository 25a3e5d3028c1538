package witnessmark.shell.truck;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.driveline.Guidance;
import witnessmark.gearbox.driveline.JointLine;
import witnessmark.gearbox.driveline.UniversalJoint;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.gearbox.evidence.RollingEvidence;
import witnessmark.shell.print.FigureJson;
import witnessmark.shell.print.FigureText;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.run.TypedFigure;

/** Works out the ripple of one or two universal joints, in words of a command. */
final class AngleAnswer {
    private static final String PHASE = "phase";

    private AngleAnswer() {}

    private record Form(
            Optional<List<String>> unusual,
            String verdict,
            List<String> concerns,
            String bounds,
            Map<String, FigureJson> figures,
            List<FigureJson.Letter> inputs) {}

    /** Of one angle, or of two parted by a comma. */
    static TruckAnswer of(String angles, String phase, String rpmWord, boolean formulas) {
        List<String> parts = List.of(angles.split(",", -1));
        if (angles.isEmpty() || parts.size() > 2) {
            throw new WrongUsage("--angle needs one joint angle, or two parted by a comma: --angle 4,3.5");
        }
        double first = TypedFigure.quantity("--angle", parts.get(0), Unit.DEGREE, Unit.DEGREE);
        double rpm = TypedFigure.quantity("--rpm", rpmWord, Unit.RPM, Unit.RPM);
        if (!(rpm > 0 && rpm <= 6000)) {
            throw new WrongUsage("--rpm '" + Terminal.harmless(rpmWord) + "' cannot be", "give above 0 to 6000");
        }
        if (parts.size() == 1 && !phase.isEmpty()) {
            throw new WrongUsage("--phase is for two joints", "give both angles: --angle 4,3.5");
        }
        return parts.size() == 1
                ? one(new UniversalJoint(first), rpm, formulas)
                : two(
                        new JointLine(
                                first,
                                TypedFigure.quantity("--angle", parts.get(1), Unit.DEGREE, Unit.DEGREE),
                                phase.isEmpty()
                                        ? JointLine.IN_PHASE
                                        : TypedFigure.quantity("--phase", phase, Unit.DEGREE, Unit.DEGREE)),
                        rpm,
                        formulas);
    }

    private static TruckAnswer one(UniversalJoint joint, double rpm, boolean formulas) {
        List<Guidance> concerns = joint.concerns(rpm);
        String alone = joint.angleDegrees() == 0
                ? "A straight joint turns evenly, but its needle bearings do not roll"
                : "One joint alone never runs evenly; a second one must cancel it";
        return answer(
                "One joint of " + degrees(joint.angleDegrees()) + " at "
                        + speed(rpm).figure().text(),
                alone + ". " + Guidance.Verdict.of(concerns).words(),
                concerns,
                joint.figures(rpm),
                List.of(angle("b", "joint angle", joint.angleDegrees()), speed(rpm)),
                List.of(),
                formulas);
    }

    private static TruckAnswer two(JointLine line, double rpm, boolean formulas) {
        List<Guidance> concerns = line.concerns(rpm);
        return answer(
                "Two joints of " + degrees(line.firstDegrees()) + " and " + degrees(line.secondDegrees())
                        + ", phase error " + degrees(line.phaseErrorDegrees()) + ", at "
                        + speed(rpm).figure().text(),
                Guidance.Verdict.of(concerns).words(),
                concerns,
                line.figures(rpm),
                List.of(
                        angle("b1", "joint at the gearbox", line.firstDegrees()),
                        angle("b2", "joint at the axle", line.secondDegrees()),
                        angle(PHASE, "yokes turned from where the joints cancel", line.phaseErrorDegrees()),
                        speed(rpm)),
                List.of(RollingEvidence.of(line, rpm)),
                formulas);
    }

    private static TruckAnswer answer(
            String title,
            String verdict,
            List<Guidance> concerns,
            Map<String, Figure> figures,
            List<Symbol> symbols,
            List<ComputedFinding> findings,
            boolean formulas) {
        List<String> why = concerns.stream().map(Guidance::words).toList();
        // Any phase is usual in a question about a line put together wrong.
        List<String> unusual = Unusual.of(symbols.stream()
                .filter(symbol -> !symbol.symbol().equals(PHASE))
                .map(Symbol::figure)
                .toArray(Figure[]::new));
        Form json = new Form(
                Json.some(unusual), verdict, why, Guidance.SOURCE, FigureJson.of(figures), FigureJson.of(symbols));
        return new TruckAnswer(
                Optional.empty(),
                page -> {
                    Unusual.print(page, unusual);
                    page.line(title);
                    page.blank();
                    page.strong(verdict);
                    page.items(why);
                    page.blank().line(Guidance.SOURCE);
                    new FigureText(page, FigureText.Formulas.of(formulas)).print(figures, symbols);
                },
                json,
                findings,
                "driveline-angles");
    }

    private static String degrees(double angle) {
        return Figure.given(angle, Unit.DEGREE).text();
    }

    private static Symbol angle(String symbol, String meaning, double degrees) {
        return new Symbol(symbol, meaning, Figure.given(degrees, Unit.DEGREE));
    }

    private static Symbol speed(double rpm) {
        return new Symbol("n", "driveline speed", Figure.given(rpm, Unit.RPM));
    }
}
