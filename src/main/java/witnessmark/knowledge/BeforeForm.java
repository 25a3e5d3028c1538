package witnessmark.knowledge;

import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads before.yaml. */
final class BeforeForm {
    private BeforeForm() {}

    static void read(YamlNode root, Draft draft) {
        for (YamlNode item :
                root.map("what is looked at before", List.of("before")).items("before")) {
            YamlMap fields = item.map("what is looked at before a work", List.of("id", "title", "work", "looks"));
            draft.befores.add(new Before(
                    draft.define(Draft.Kind.FACT, fields),
                    fields.text("title"),
                    draft.refer(Draft.Kind.ACCESS, fields, "work", ""),
                    draft.refer(Draft.Kind.FINDING, fields, "looks")));
        }
    }
}
