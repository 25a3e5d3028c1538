package witnessmark.shell.cases;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.casefile.EarlierSample;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.Measure;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.run.TypedFigure;

/** Reads earlier samples as typed: value, day and where known the odometer, one after another with semicolons between. */
final class EarlierSamples {
    static final String FORM = "\"60 on 2026-03-14 at 812000 km; 55 on 2025-09-02\"";

    private static final Pattern ONE = Pattern.compile("(\\S+)\\s+(?:on\\s+)?(\\S+)(?:\\s+(?:at\\s+)?(.+))?");

    private final Measure measure;
    private final Unit unit;

    /** @param unit in which the values are */
    EarlierSamples(Measure measure, Unit unit) {
        this.measure = measure;
        this.unit = unit;
    }

    /** None for an empty text. */
    List<EarlierSample> of(String typed) {
        return typed.isBlank()
                ? List.of()
                : Arrays.stream(typed.split(";"))
                        .map(String::strip)
                        .map(this::one)
                        .toList();
    }

    private EarlierSample one(String typed) {
        Matcher parts = ONE.matcher(typed);
        if (!parts.matches()) {
            throw new Refused(
                    "--earlier: '" + Terminal.harmless(typed) + "' is no earlier sample",
                    "write value, day and where known the odometer, as in " + FORM);
        }
        double value = TypedFigure.number("earlier value", parts.group(1));
        if (measure.belief(value, unit) == Measure.Belief.IMPOSSIBLE) {
            throw new Refused(
                    "--earlier: " + Terminal.harmless(parts.group(1)) + " " + unit.symbol() + " cannot be",
                    "look at the number again; it is not kept");
        }
        OptionalDouble odometer = parts.group(3) == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(TypedFigure.quantity("odometer", parts.group(3), Unit.KILOMETRE, Unit.KILOMETRE));
        return new EarlierSample(value, EarlierSample.dayOf(parts.group(2)), odometer);
    }
}
