package witnessmark.knowledge;

import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads es/*.yaml: the texts of the other files, each beside its Spanish. */
final class SpanishForm {
    private SpanishForm() {}

    static void read(YamlNode root, Draft draft) {
        for (YamlNode item : root.map("the Spanish texts", List.of("texts")).items("texts")) {
            YamlMap fields = item.map("a text", List.of("en", "es"));
            String english = fields.text("en");
            String spanish = fields.text("es");
            String before = draft.spanish.putIfAbsent(english, spanish);
            if (before != null && !before.equals(spanish) && draft.onFirstLayer()) {
                item.fault("the text stands elsewhere with another Spanish", "keep one, or word the English otherwise");
            } else if (before != null) {
                draft.spanish.put(english, spanish);
            }
        }
    }
}
