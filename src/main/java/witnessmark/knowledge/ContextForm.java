package witnessmark.knowledge;

import java.util.List;
import java.util.Optional;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads context.yaml. */
final class ContextForm {
    private ContextForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the context", List.of("context"));
        for (YamlNode item : map.items("context")) {
            YamlMap fields = item.map("a circumstance", List.of("finding", "class", "cause", "odds", "why"));
            Optional<String> classId = fields.get("class").map(p -> draft.refer(Draft.Kind.CLASS, p));
            Optional<String> cause = fields.get("cause").map(p -> draft.refer(Draft.Kind.CAUSE, p));
            if (classId.isPresent() == cause.isPresent()) {
                item.fault("a circumstance acts on a class or on a cause", "name exactly one of 'class', 'cause'");
            }
            draft.context.add(new ContextEffect(
                    draft.refer(Draft.Kind.FINDING, fields, "finding", ""),
                    classId,
                    cause,
                    odds(fields),
                    fields.text("why")));
        }
    }

    private static double odds(YamlMap fields) {
        double odds = fields.number("odds");
        if (odds > 0 && odds <= 1000) {
            return odds;
        }
        fields.get("odds").ifPresent(p -> p.fault("odds: " + odds + " is no factor", "above 0, at most 1000"));
        return 1;
    }
}
