package witnessmark.shell.truck;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.driveline.JointLine;
import witnessmark.gearbox.driveline.UniversalJoint;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.gearbox.evidence.RollingEvidence;
import witnessmark.shell.print.FigureJson;
import witnessmark.shell.print.FigureText;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.run.TypedFigure;

/** Works out the ripple of one or two universal joints, in words of a command. */
final class AngleAnswer {
    private AngleAnswer() {}

    /** Of one angle, or of two parted by a comma. */
    static TruckAnswer of(String angles, String phase, String rpmWord, boolean formulas) {
        List<String> parts = List.of(angles.split(",", -1));
        if (angles.isEmpty() || parts.size() > 2) {
            throw new WrongUsage("--angle needs one joint angle, or two parted by a comma: --angle 4,3.5");
        }
        double first = TypedFigure.quantity("--angle", parts.get(0), Unit.DEGREE, Unit.DEGREE);
        double rpm = TypedFigure.quantity("--rpm", rpmWord, Unit.RPM, Unit.RPM);
        if (!(rpm > 0 && rpm <= 6000)) {
            throw new WrongUsage("--rpm '" + Terminal.harmless(rpmWord) + "' cannot be; give above 0 to 6000");
        }
        if (parts.size() == 1 && !phase.isEmpty()) {
            throw new WrongUsage("--phase is for two joints; give both angles: --angle 4,3.5");
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
        Map<String, Figure> figures = new LinkedHashMap<>();
        figures.put("least speed over input speed", joint.leastRatio());
        figures.put("greatest speed over input speed", joint.greatestRatio());
        figures.put("ripple, greatest less least", joint.ripple());
        figures.put("peak acceleration", joint.peakAcceleration(rpm));
        figures.put("greatest lead or lag", joint.greatestLead());
        List<Symbol> symbols = List.of(angle("b", "joint angle", joint.angleDegrees()), speed(rpm));
        return answer(
                "One joint of "
                        + Figure.given(joint.angleDegrees(), Unit.DEGREE).text(),
                "One joint alone never runs evenly; a second one must cancel it",
                figures,
                symbols,
                List.of(),
                formulas);
    }

    private static TruckAnswer two(JointLine line, double rpm, boolean formulas) {
        List<Symbol> symbols = List.of(
                angle("b1", "joint at the gearbox", line.firstDegrees()),
                angle("b2", "joint at the axle", line.secondDegrees()),
                angle("phase", "yokes turned from where the joints cancel", line.phaseErrorDegrees()),
                speed(rpm));
        return answer(
                "Two joints of "
                        + Figure.given(line.firstDegrees(), Unit.DEGREE).text() + " and "
                        + Figure.given(line.secondDegrees(), Unit.DEGREE).text() + ", phase error "
                        + Figure.given(line.phaseErrorDegrees(), Unit.DEGREE).text(),
                line.withinGuidance()
                        ? "Within the usual guidance; the driveline maker's own limit decides"
                        : "Beyond the usual guidance; check angles and phasing against the driveline maker's limit",
                line.figures(rpm),
                symbols,
                List.of(RollingEvidence.of(line)),
                formulas);
    }

    private static TruckAnswer answer(
            String title,
            String verdict,
            Map<String, Figure> figures,
            List<Symbol> symbols,
            List<ComputedFinding> findings,
            boolean formulas) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("verdict", verdict);
        json.put("figures", FigureJson.of(figures));
        json.put("inputs", FigureJson.of(symbols));
        return new TruckAnswer(
                Optional.empty(),
                page -> {
                    page.line(title);
                    page.blank();
                    page.strong(verdict);
                    new FigureText(page, formulas).print(figures, symbols);
                },
                json,
                findings,
                "driveline-angles");
    }

    private static Symbol angle(String symbol, String meaning, double degrees) {
        return new Symbol(symbol, meaning, Figure.given(degrees, Unit.DEGREE));
    }

    private static Symbol speed(double rpm) {
        return new Symbol("w", "driveline speed, in radians per second", Figure.given(rpm, Unit.RPM));
    }
}
