package witnessmark.knowledge;

import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads retired.yaml. */
final class RetiredForm {
    private RetiredForm() {}

    static void read(YamlNode root, Draft draft) {
        for (YamlNode item : root.map("retired findings", List.of("retired")).items("retired")) {
            YamlMap fields = item.map("a retired finding", List.of("id", "title", "now"));
            String id = draft.define(Draft.Kind.FINDING, fields);
            List<String> now = draft.refer(Draft.Kind.FINDING, fields, "now");
            if (now.isEmpty()) {
                item.fault("'" + id + "' leads nowhere", "name in 'now' what it is told apart into");
            }
            draft.retired.put(id, new Retired(id, fields.text("title"), now));
        }
    }
}
