package witnessmark.knowledge;

import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads look-alikes/*.yaml. */
final class LookAlikeForm {
    private LookAlikeForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the look-alikes", List.of("look-alikes"));
        for (YamlNode item : map.items("look-alikes")) {
            YamlMap fields = item.map("a pair", List.of("between", "check", "tells", "sources"));
            List<String> pair = draft.refer(Draft.Kind.CAUSE, fields, "between");
            List<String> checks = draft.refer(Draft.Kind.FINDING, fields, "check");
            String tells = fields.text("tells");
            List<String> sources = SourceForm.cited(fields, draft);
            if (pair.size() != 2 || pair.get(0).equals(pair.get(1))) {
                item.fault("'between' does not name two causes", "name exactly two different ones");
                continue;
            }
            draft.lookAlikes.add(new LookAlike(pair.get(0), pair.get(1), checks, tells, sources));
        }
    }
}
