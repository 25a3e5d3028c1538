package witnessmark.knowledge;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.LayoutFeatures;
import witnessmark.yaml.YamlMap;

/** Reads the {@code applies-to} of a cause or a finding. */
final class ApplicabilityForm {
    private static final String RATIOS = "forward-ratios";

    private ApplicabilityForm() {}

    static Applicability read(YamlMap fields) {
        return fields.get("applies-to")
                .map(node -> applicability(node.map("applies-to")))
                .orElse(Applicability.ANY);
    }

    private static Applicability applicability(YamlMap map) {
        Set<String> known = new LinkedHashSet<>(LayoutFeatures.names());
        known.add(RATIOS);
        map.allow(known);
        Map<String, Set<String>> allowed = new HashMap<>();
        for (String feature : LayoutFeatures.names()) {
            if (map.has(feature)) {
                allowed.put(feature, words(map, feature));
            }
        }
        Optional<YamlMap> span = map.get(RATIOS).map(node -> node.map(RATIOS, List.of("from", "to")));
        return new Applicability(allowed, ratios(span, "from", 1), ratios(span, "to", 32));
    }

    private static int ratios(Optional<YamlMap> span, String end, int otherwise) {
        return (int) span.map(s -> s.numberIfGiven(end))
                .orElse(OptionalDouble.empty())
                .orElse(otherwise);
    }

    private static Set<String> words(YamlMap map, String feature) {
        Set<String> words = new LinkedHashSet<>();
        map.items(feature).forEach(item -> item.one(feature, LayoutFeatures.allowed(feature))
                .map(EnumWord::of)
                .ifPresent(words::add));
        return words;
    }
}
