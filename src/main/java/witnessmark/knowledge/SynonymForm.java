package witnessmark.knowledge;

import java.util.ArrayList;
import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads synonyms.yaml. */
final class SynonymForm {
    private SynonymForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the synonyms", List.of("synonyms"));
        for (YamlNode group : map.items("synonyms")) {
            List<String> words = new ArrayList<>();
            group.items("a group of synonyms")
                    .forEach(item -> item.text("synonym").ifPresent(words::add));
            if (words.size() < 2) {
                group.fault("a group of one has no synonym", "name two or more");
            }
            draft.synonyms.add(List.copyOf(words));
        }
    }
}
