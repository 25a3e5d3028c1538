package witnessmark.knowledge;

import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads consistency.yaml. */
final class ConsistencyForm {
    private ConsistencyForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("consistency", List.of("never-together", "follows", "explained-by"));
        for (YamlNode item : map.items("never-together")) {
            YamlMap fields = item.map("never-together", List.of("findings", "two-sources", "why"));
            List<String> findings = draft.refer(Draft.Kind.FINDING, fields, "findings");
            if (findings.size() < 2) {
                item.fault("one finding alone cannot contradict", "name two or more");
            }
            draft.neverTogether.add(
                    new NeverTogether(findings, fields.flagOr("two-sources", false), fields.text("why")));
        }
        for (YamlNode item : map.items("follows")) {
            YamlMap fields = item.map("follows", List.of("if", "then", "always", "why"));
            draft.follows.add(new Follows(
                    draft.refer(Draft.Kind.FINDING, fields, "if", ""),
                    draft.refer(Draft.Kind.FINDING, fields, "then", ""),
                    fields.flagOr("always", true),
                    fields.text("why")));
        }
        for (YamlNode item : map.items("explained-by")) {
            YamlMap fields = item.map("explained-by", List.of("finding", "by", "why"));
            draft.explainedBy.add(new ExplainedBy(
                    draft.refer(Draft.Kind.FINDING, fields, "finding", ""),
                    draft.refer(Draft.Kind.FINDING, fields, "by"),
                    fields.text("why")));
        }
    }
}
