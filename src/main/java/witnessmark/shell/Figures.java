package witnessmark.shell;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import witnessmark.gearbox.Unit;

/** Reads numbers and units from a command's words. */
final class Figures {
    private Figures() {}

    static double number(String what, String word) {
        try {
            double value = Double.parseDouble(word);
            if (Double.isFinite(value) && !word.matches(".*[dDfF]$")) {
                return value;
            }
        } catch (NumberFormatException e) {
            // told below
        }
        throw new WrongUsage(
                what + " '" + Terminal.harmless(word) + "' is not a number; write digits, with '.' for decimals");
    }

    /** The number; empty for an empty word. */
    static OptionalDouble maybe(String what, String word) {
        return word.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(what, word));
    }

    static Unit unit(String word) {
        return Unit.parse(word)
                .orElseThrow(() -> new WrongUsage("unit '" + Terminal.harmless(word) + "' is not known; one of "
                        + Arrays.stream(Unit.values()).map(Unit::symbol).collect(Collectors.joining(" "))));
    }
}
