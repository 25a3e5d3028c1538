package witnessmark.casefile;

import java.util.List;

/**
 * What a sample case should come to; a real case has none.
 *
 * @param verdict class id, or undetermined
 * @param first causes of which any may be ranked first; empty where it does not matter
 * @param withinThree causes that must all be among the first three
 * @param contradiction whether the evidence contradicts itself
 */
public record ExpectedOutcome(String verdict, List<String> first, List<String> withinThree, boolean contradiction) {
    public ExpectedOutcome {
        verdict = CheckedText.id("verdict", verdict);
        first = List.copyOf(first);
        withinThree = List.copyOf(withinThree);
        first.forEach(cause -> CheckedText.id("first", cause));
        withinThree.forEach(cause -> CheckedText.id("within-three", cause));
        if (withinThree.size() > 3) {
            throw new CaseRefused("within-three: " + withinThree.size() + " causes are named", "name three at most");
        }
    }
}
