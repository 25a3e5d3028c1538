package witnessmark.casefile;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a warranty claim says besides the findings.
 *
 * @param facts only those that say something
 * @param parts in the order entered
 */
public record Claim(Map<ClaimField, String> facts, List<PartLine> parts) {
    private static final int MOST_PARTS = 200;

    public Claim {
        Map<ClaimField, String> checked = new EnumMap<>(ClaimField.class);
        facts.forEach((field, value) -> {
            if (!value.isBlank()) {
                checked.put(field, field.checked(value));
            }
        });
        facts = Collections.unmodifiableMap(checked);
        parts = List.copyOf(parts);
        if (parts.size() > MOST_PARTS) {
            throw new CaseRefused("claim: " + parts.size() + " part lines", "keep to " + MOST_PARTS);
        }
    }

    /** A claim that says nothing. */
    public static Claim none() {
        return new Claim(Map.of(), List.of());
    }

    public boolean isEmpty() {
        return facts.isEmpty() && parts.isEmpty();
    }

    /** The fact as written; empty where it was not said. */
    public String fact(ClaimField field) {
        return facts.getOrDefault(field, "");
    }

    /** The same claim with these facts set; an empty value takes one away. */
    public Claim with(Map<ClaimField, String> changed) {
        Map<ClaimField, String> all = new EnumMap<>(ClaimField.class);
        all.putAll(facts);
        all.putAll(changed);
        return new Claim(all, parts);
    }

    /** The same claim with a part line after the others. */
    public Claim with(PartLine part) {
        List<PartLine> all = new ArrayList<>(parts);
        all.add(part);
        return new Claim(facts, all);
    }

    /** The same claim without the part line of this number, from one; {@link CaseRefused} if there is none. */
    public Claim without(int number) {
        if (number < 1 || number > parts.size()) {
            throw new CaseRefused(
                    "part line " + number + " is not on the claim", "it has " + parts.size() + "; see: case show");
        }
        List<PartLine> all = new ArrayList<>(parts);
        all.remove(number - 1);
        return new Claim(facts, all);
    }

    /** For the chain, exports and answers; without what is empty. */
    public Map<String, Object> form() {
        Map<String, Object> form = new LinkedHashMap<>();
        facts.forEach((field, value) -> form.put(field.word(), value));
        if (!parts.isEmpty()) {
            form.put("parts", parts.stream().map(PartLine::form).toList());
        }
        return form;
    }
}
