package witnessmark.knowledge;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.LayoutFeatures;

/**
 * The layouts to which a cause or a finding can apply; what a layout does not say rules nothing out.
 *
 * @param allowed for a named feature of the layout the words it may have; a feature not named may be anything;
 *     in the order of their names
 * @param fewestRatios fewest forward ratios
 * @param mostRatios most forward ratios
 */
public record Applicability(Map<String, Set<String>> allowed, int fewestRatios, int mostRatios) {
    public static final Applicability ANY = new Applicability(Map.of(), 1, 32);

    /**
     * What a gearbox has that the cause or finding does not go with.
     *
     * @param feature name of the feature; empty for the number of forward ratios
     * @param has the word or number it has
     */
    public record Mismatch(String feature, String has) {}

    public Applicability {
        allowed = Collections.unmodifiableSortedMap(new TreeMap<>(allowed));
    }

    /** Whether it goes with every layout. */
    public boolean isOfAny() {
        return allowed.isEmpty() && fewestRatios == ANY.fewestRatios && mostRatios == ANY.mostRatios;
    }

    /** Why it does not apply to the layout, empty if it does or may. */
    public Optional<Mismatch> reasonAgainst(Layout layout) {
        for (var feature : allowed.entrySet()) {
            Optional<String> word = LayoutFeatures.word(layout, feature.getKey());
            if (word.isPresent() && !feature.getValue().contains(word.get())) {
                return Optional.of(new Mismatch(feature.getKey(), word.get()));
            }
        }
        if (layout.forwardRatios().isPresent()) {
            int ratios = layout.forwardRatios().getAsInt();
            if (ratios < fewestRatios || ratios > mostRatios) {
                return Optional.of(new Mismatch("", String.valueOf(ratios)));
            }
        }
        return Optional.empty();
    }
}
