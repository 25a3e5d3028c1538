package witnessmark.knowledge;

import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads cautions.yaml. */
final class CautionForm {
    private CautionForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the cautions", List.of("cautions"));
        for (YamlNode item : map.items("cautions")) {
            YamlMap fields =
                    item.map("a caution", List.of("id", "en", "es", "brief-en", "brief-es", "of-truck", "covers"));
            String id = draft.define(Draft.Kind.CAUTION, fields);
            draft.cautions.put(
                    id,
                    new Caution(
                            id,
                            fields.text("en"),
                            fields.text("es"),
                            new Caution.Brief(
                                    fields.textOr("brief-en", fields.text("en")),
                                    fields.textOr("brief-es", fields.text("es"))),
                            fields.flagOr("of-truck", false),
                            draft.refer(Draft.Kind.CAUTION, fields, "covers")));
        }
    }
}
