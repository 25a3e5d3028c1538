package witnessmark.shell.run;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.gearbox.Unit;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.yaml.PlainText;

/** Reads numbers and units from a command's words. */
public final class TypedFigure {
    private static final Pattern QUANTITY = Pattern.compile("([+-]?[0-9]*\\.?[0-9]+)\\s*((?:[^0-9.,\\s].*)?)");

    private TypedFigure() {}

    public static double number(String what, String word) {
        return PlainText.number(word)
                .orElseThrow(() -> new WrongUsage(
                        what + " '" + Terminal.harmless(word) + "' is not a number",
                        "write digits, with '.' for decimals"));
    }

    /** The number; empty for an empty word. */
    public static OptionalDouble maybe(String what, String word) {
        return word.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(what, word));
    }

    /**
     * A number with its unit, as in 37mph or "80000 lb", or a bare number in {@code plain}; the answer is in
     * {@code target}.
     */
    public static double quantity(String what, String word, Unit plain, Unit target) {
        Matcher parts = QUANTITY.matcher(word.strip());
        if (!parts.matches()) {
            throw new WrongUsage(
                    what + " '" + Terminal.harmless(word) + "' is not a number",
                    "write digits, with '.' for" + " decimals and no other signs, and a unit behind it if you like: "
                            + plain.symbol());
        }
        Unit unit = parts.group(2).isEmpty()
                ? plain
                : Unit.parse(parts.group(2), target.quantity())
                        .or(() -> Unit.parse(parts.group(2)))
                        .orElseThrow(() -> new WrongUsage(
                                what + " '" + Terminal.harmless(word) + "' has a unit that is not known",
                                "give it in " + unitsLike(target)));
        if (unit.quantity() != target.quantity()) {
            throw new WrongUsage(
                    what + " '" + Terminal.harmless(word) + "' is in " + unit.symbol() + ", which does not convert to "
                            + target.symbol(),
                    "give it in " + unitsLike(target));
        }
        return unit.convert(number(what, parts.group(1)), target);
    }

    private static String unitsLike(Unit target) {
        return Unit.symbols(target.quantity());
    }

    /**
     * A unit for what is measured so.
     *
     * @param what is measured, as a refusal names it
     */
    public static Unit unit(String what, String word, Unit.Quantity quantity) {
        return Unit.parse(word, quantity)
                .orElseThrow(() -> new Refused(
                        what + " is not measured in " + Terminal.harmless(word),
                        "give it in one of: " + Unit.symbols(quantity)));
    }
}
