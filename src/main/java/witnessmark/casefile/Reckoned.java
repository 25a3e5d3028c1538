package witnessmark.casefile;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Unit;

/**
 * The figure that decides about a computed finding, and the bound it was held against: so much is kept that the result
 * can be said again in any language and unit.
 */
public record Reckoned(double value, Unit unit, double bound, Unit boundUnit, Outcome outcome) {

    /** What the figure came to. */
    public enum Outcome {
        PRESENT,
        ABSENT,
        /** Told and kept, but nothing follows from it. */
        NOT_COUNTED;

        /** The words for them, for messages. */
        public static final String WORDS =
                Arrays.stream(values()).map(Outcome::word).collect(Collectors.joining(", "));

        public String word() {
            return EnumWord.of(this);
        }

        public static Optional<Outcome> parse(String word) {
            return Arrays.stream(values()).filter(o -> o.word().equals(word)).findFirst();
        }
    }

    public Reckoned {
        value = PlainNumber.checked("value", value);
        bound = PlainNumber.checked("bound", bound);
    }

    /** For the chain and exports. */
    Map<String, Object> form() {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("value", value);
        form.put("unit", unit.symbol());
        form.put("bound", bound);
        form.put("bound-unit", boundUnit.symbol());
        form.put("outcome", outcome.word());
        return form;
    }
}
