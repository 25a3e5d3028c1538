package witnessmark.casefile;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.EnumWord;

/**
 * A part of the claim.
 *
 * @param old the part taken out, with its number where it is known; empty where one was only put in, as a gasket set
 * @param fitted the part put in; empty where none was, but one of both is there
 * @param quantity how many, above zero
 * @param whereabouts what became of the old part; empty where not said, or where there is none
 * @param tag what is written on the tag of the old part; empty for none, or where there is none
 */
public record PartLine(String old, String fitted, double quantity, Optional<Whereabouts> whereabouts, String tag) {
    private static final double MOST = 10_000;

    /** What became of a part taken out. */
    public enum Whereabouts {
        RETURNED,
        KEPT,
        SCRAPPED;

        /** The words for them, for messages. */
        public static final String WORDS =
                Arrays.stream(values()).map(Whereabouts::word).collect(Collectors.joining(", "));

        public String word() {
            return EnumWord.of(this);
        }

        public static Optional<Whereabouts> parse(String word) {
            return Arrays.stream(values()).filter(w -> w.word().equals(word)).findFirst();
        }
    }

    public PartLine {
        old = CheckedText.line("part", old);
        fitted = CheckedText.line("part '" + old + "', fitted", fitted);
        if (old.isEmpty() && fitted.isEmpty()) {
            throw new CaseRefused("part: nothing is written", "name the part taken out, or the one put in");
        }
        String name = "part '" + (old.isEmpty() ? fitted : old) + "'";
        tag = CheckedText.line(name + ", tag", tag);
        if (!(quantity > 0 && quantity <= MOST)) {
            throw new CaseRefused(name + ": a quantity of " + quantity, "give a number above 0, at most 10000");
        }
        if (old.isEmpty() && (whereabouts.isPresent() || !tag.isEmpty())) {
            throw new CaseRefused(
                    name + ": whereabouts and tag are of an old part, and none was taken out",
                    "name the part taken out, or leave them out");
        }
    }

    /** For the chain and exports; without what is empty. */
    public Map<String, Object> form() {
        Map<String, Object> form = new LinkedHashMap<>();
        if (!old.isEmpty()) {
            form.put("old", old);
        }
        if (!fitted.isEmpty()) {
            form.put("fitted", fitted);
        }
        form.put("quantity", quantity);
        whereabouts.ifPresent(w -> form.put("whereabouts", w.word()));
        if (!tag.isEmpty()) {
            form.put("tag", tag);
        }
        return form;
    }
}
