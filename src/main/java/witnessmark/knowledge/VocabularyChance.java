package witnessmark.knowledge;

import java.util.Comparator;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.yaml.YamlMap;

/** Turns a word of the vocabulary into its number. */
final class VocabularyChance {
    private VocabularyChance() {}

    /** The chance the named word stands for; 0.5 after a fault. */
    static double chance(YamlMap fields, String name, Map<String, Double> known) {
        String word = fields.text(name);
        Double chance = known.get(word);
        if (chance != null) {
            return chance;
        }
        if (!word.isEmpty()) {
            fields.get(name)
                    .ifPresent(place -> place.fault(
                            name + " '" + word + "' is not in the vocabulary",
                            "one of "
                                    + known.entrySet().stream()
                                            .sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
                                            .map(Map.Entry::getKey)
                                            .collect(Collectors.joining(", "))));
        }
        return 0.5;
    }
}
