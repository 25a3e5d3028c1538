package witnessmark.shell;

import java.util.OptionalDouble;
import witnessmark.gearbox.Unit;
import witnessmark.yaml.PlainText;

/** Reads numbers and units from a command's words. */
final class Figures {
    private Figures() {}

    static double number(String what, String word) {
        return PlainText.number(word)
                .orElseThrow(() -> new WrongUsage(what + " '" + Terminal.harmless(word)
                        + "' is not a number; write digits, with '.' for decimals"));
    }

    /** The number; empty for an empty word. */
    static OptionalDouble maybe(String what, String word) {
        return word.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(what, word));
    }

    static Unit unit(String word) {
        return Unit.parse(word)
                .orElseThrow(() ->
                        new WrongUsage("unit '" + Terminal.harmless(word) + "' is not known; one of " + Unit.SYMBOLS));
    }
}
