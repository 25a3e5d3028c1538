package witnessmark.knowledge;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads the {@code applies-to} of a cause or a finding. */
final class ApplicabilityForm {
    private ApplicabilityForm() {}

    static Applicability read(YamlMap fields) {
        return fields.get("applies-to")
                .map(node -> applicability(node.map("applies-to")))
                .orElse(Applicability.ANY);
    }

    private static Applicability applicability(YamlMap map) {
        Set<String> names = new TreeSet<>(LayoutWords.ALLOWED.keySet());
        names.add("forward-ratios");
        map.allow("applies-to", names);
        Map<String, Set<String>> allowed = new HashMap<>();
        int fewest = 1;
        int most = 32;
        for (String name : map.names()) {
            if (name.equals("forward-ratios")) {
                YamlMap span = map.require(name).orElseThrow().map(name);
                span.allow(name, Set.of("from", "to"));
                fewest = span.numberIfGiven("from").map(Double::intValue).orElse(1);
                most = span.numberIfGiven("to").map(Double::intValue).orElse(32);
            } else if (names.contains(name)) {
                allowed.put(name, words(map, name));
            }
        }
        return new Applicability(allowed, fewest, most);
    }

    private static Set<String> words(YamlMap map, String name) {
        Set<String> words = new LinkedHashSet<>();
        for (YamlNode item : map.items(name)) {
            String word = item.text(name).orElse("");
            if (!LayoutWords.ALLOWED.get(name).contains(word)) {
                item.fault(
                        name + " '" + word + "' is not known",
                        "one of " + String.join(", ", new TreeSet<>(LayoutWords.ALLOWED.get(name))));
            }
            words.add(word);
        }
        return words;
    }
}
