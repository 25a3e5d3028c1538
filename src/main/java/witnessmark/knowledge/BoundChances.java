package witnessmark.knowledge;

import java.util.HashMap;
import java.util.Map;

/**
 * Keeps signs from weighing like looks: a finding that is neither a look at a part nor says why it is conclusive is at
 * most so many times likelier with its cause than without it, and so is its absence the other way round.
 */
final class BoundChances {
    private BoundChances() {}

    static void of(Draft draft) {
        double ratio = draft.vocabulary.greatestRatio();
        Map<String, Double> strongest = new HashMap<>();
        draft.causes.replaceAll((id, cause) -> cause.withLinks(cause.links().stream()
                .map(link -> bounded(link, draft.findings.get(link.finding()), ratio))
                .toList()));
        draft.causes.values().forEach(cause -> cause.links()
                .forEach(link -> strongest.merge(link.finding(), link.strength(), Math::max)));
        draft.findings.replaceAll((id, finding) -> mayWeighMore(finding)
                ? finding
                : finding.withBackground(Math.max(finding.background(), strongest.getOrDefault(id, 0.0) / ratio)));
    }

    private static Cause.Link bounded(Cause.Link link, Finding finding, double ratio) {
        return mayWeighMore(finding) ? link : link.withStrength(Math.min(link.strength(), 1 - 1 / ratio));
    }

    private static boolean mayWeighMore(Finding finding) {
        return finding.kind() == Finding.Kind.LOOK || !finding.conclusive().isEmpty();
    }
}
