package witnessmark.knowledge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads vocabulary.yaml. */
final class VocabularyForm {
    private VocabularyForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map(
                "the vocabulary",
                List.of(
                        "strengths",
                        "priors",
                        "backgrounds",
                        "against",
                        "looks",
                        "greatest-ratio",
                        "told",
                        "unsure",
                        "classes"));
        if (!draft.onFirstLayer()) {
            root.fault("stands in a site's own folder", "the vocabulary is the shipped one; take the file out");
            return;
        }
        draft.vocabulary = new Vocabulary(
                chances(map, "strengths"),
                chances(map, "priors"),
                chances(map, "backgrounds"),
                chances(map, "against"),
                chanceIn(map, "looks", "seen-if-there"),
                chanceIn(map, "looks", "seen-without-cause"),
                greatestRatio(map),
                chanceIn(map, "told", "if-so"),
                chanceIn(map, "told", "if-not"),
                chanceIn(map, "told", "not-on-paper-if-so"),
                chanceIn(map, "unsure", "if-present"),
                chanceIn(map, "unsure", "if-absent"),
                classes(map, draft));
    }

    private static Map<String, Double> chances(YamlMap map, String name) {
        Map<String, Double> chances = new LinkedHashMap<>();
        map.require(name).map(n -> n.map(name)).ifPresent(words -> words.names()
                .forEach(word -> chances.put(word, chance(words, word))));
        return chances;
    }

    private static double chanceIn(YamlMap map, String group, String name) {
        return map.require(group).map(node -> chance(node.map(group), name)).orElse(0.5);
    }

    private static double greatestRatio(YamlMap map) {
        double ratio = map.number("greatest-ratio");
        if (ratio > 1 && ratio <= 1000) {
            return ratio;
        }
        map.get("greatest-ratio")
                .ifPresent(n -> n.fault("greatest-ratio: " + ratio + " is no ratio", "above 1, at most 1000"));
        return 30;
    }

    /** A chance; 0.5 after a fault. */
    private static double chance(YamlMap map, String name) {
        Optional<YamlNode> node = map.require(name);
        OptionalDouble number = node.map(n -> n.number(name)).orElse(OptionalDouble.empty());
        if (number.isEmpty()) {
            return 0.5;
        }
        double chance = number.getAsDouble();
        if (chance <= 0 || chance >= 1) {
            node.get().fault(name + ": " + chance + " is no chance", "between 0 and 1, both left out");
            return 0.5;
        }
        return chance;
    }

    private static List<Vocabulary.CauseClass> classes(YamlMap map, Draft draft) {
        List<Vocabulary.CauseClass> classes = new ArrayList<>();
        for (YamlNode item : map.items("classes")) {
            YamlMap fields = item.map("a class", List.of("id", "title", "blames", "names", "plain"));
            classes.add(new Vocabulary.CauseClass(
                    draft.define(Draft.Kind.CLASS, fields),
                    fields.text("title"),
                    fields.flagOr("blames", false),
                    fields.flagOr("names", false),
                    fields.text("plain")));
        }
        return classes;
    }
}
