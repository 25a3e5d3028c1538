package witnessmark.knowledge;

import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads must-look.yaml. */
final class MustLookForm {
    private MustLookForm() {}

    static void read(YamlNode root, Draft draft) {
        for (YamlNode item : root.map("must-look checks", List.of("must-look")).items("must-look")) {
            YamlMap fields = item.map("must-look checks of a complaint", List.of("id", "title", "symptoms", "looks"));
            draft.mustLooks.add(new MustLook(
                    draft.define(Draft.Kind.FACT, fields),
                    fields.text("title"),
                    draft.refer(Draft.Kind.FINDING, fields, "symptoms"),
                    draft.refer(Draft.Kind.FINDING, fields, "looks")));
        }
    }
}
